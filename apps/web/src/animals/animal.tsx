/** The patient beside its name: one weight of line, facing left, an eye as a dot. Names the kind, never decorates. */
import type { ReactNode } from 'react';

interface AnimalProps {
  readonly species: string;
  readonly width: number;
}

export function Animal({ species, width }: AnimalProps) {
  return (
    <svg
      width={width}
      height={(width * 80) / 98}
      viewBox="0 0 98 80"
      fill="none"
      stroke="currentColor"
      strokeWidth="2.4"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {drawingFor(species)}
    </svg>
  );
}

function drawingFor(species: string): ReactNode {
  const found = KINDS.find(([words]) => words.test(species));
  return found ? found[1] : <Quadruped />;
}

const KINDS: readonly (readonly [RegExp, ReactNode])[] = [
  [/squirrel|dormouse/i, <Squirrel key="s" />],
  [/owl/i, <Owl key="o" />],
  [/hedgehog/i, <Hedgehog key="h" />],
  [/rabbit|hare|leveret/i, <Rabbit key="r" />],
  [/bird|kestrel|hawk|buzzard|pigeon|dove|gull|crow|thrush|duck|swan|goose|swift|falcon|kite|magpie/i, <Bird key="b" />],
];

function Squirrel() {
  return (
    <>
      <path d="M12 30c1-7 6-12 13-13l2-8c4 2 6 6 6 10 4 4 5 9 3 14l-6 4c-7 1-14-1-18-7z" />
      <circle cx="22" cy="26" r="1.6" fill="currentColor" stroke="none" />
      <path d="M33 36c10 6 16 16 15 30M30 37c-4 5-6 10-5 16l-5 3M25 53c-2 5 0 10 3 14h26" />
      <path d="M40 55c-7 0-11 5-10 12M36 67h-9" />
      <path d="M54 67c10-6 12-14 12-24 0-14 4-30 16-31 8 0 11 8 7 14-3 4-8 3-9 0M54 67c18 2 28-8 27-23-1-8 1-12 6-16" />
    </>
  );
}

function Owl() {
  return (
    <>
      <path d="M26 14c-8 9-10 22-8 36 2 14 14 22 30 22s28-8 30-22c2-14 0-27-8-36" />
      <path d="M26 14c7-6 38-6 44 0-2 4-6 6-10 6-6 0-10 3-12 8-2-5-6-8-12-8-4 0-8-2-10-6z" />
      <circle cx="35" cy="30" r="8" />
      <circle cx="61" cy="30" r="8" />
      <circle cx="35" cy="30" r="2.4" fill="currentColor" stroke="none" />
      <circle cx="61" cy="30" r="2.4" fill="currentColor" stroke="none" />
      <path d="M48 35l-3 5 3 4 3-4z" />
      <path d="M34 52l4 3 4-3M44 52l4 3 4-3M54 52l4 3 4-3M39 60l4 3 4-3M49 60l4 3 4-3" />
      <path d="M38 72v4M43 72v4M53 72v4M58 72v4" />
    </>
  );
}

function Hedgehog() {
  return (
    <>
      <path d="M6 54c4-8 9-13 16-16 4-14 18-23 34-22 20 1 34 15 34 34 0 8-3 14-8 18H26c-6-1-12-4-16-8-3-1-4-3-4-6z" />
      <path d="M22 38c4 8 5 18 3 28" />
      <circle cx="17" cy="49" r="1.8" fill="currentColor" stroke="none" />
      <circle cx="7" cy="55" r="2" fill="currentColor" stroke="none" />
      <path d="M38 26l3 8M52 22l1 9M66 25l-3 8M77 34l-6 5M35 42l5 6M49 40l2 8M62 41l-1 8M75 48l-7 3M40 58l4 5M54 57l1 7M67 58l-3 6" />
      <path d="M32 68v4M40 68v4M68 68v4M76 68v4" />
    </>
  );
}

function Rabbit() {
  return (
    <>
      <path d="M28 28c-4-8-4-18 0-24 5 5 7 14 6 23M34 27c2-8 6-15 12-18 1 8-2 16-7 22" />
      <path d="M28 28c-9 2-15 8-16 15 0 5 4 8 10 8h6" />
      <circle cx="24" cy="38" r="1.8" fill="currentColor" stroke="none" />
      <path d="M39 31c3 3 5 6 5 9 18-6 38 4 41 20 1 6 0 10-2 12H30" />
      <path d="M28 51c-1 8 0 14 4 21M30 72H20c0-4 4-6 9-5M54 72c-6-12 2-22 12-22 9 0 15 8 14 16" />
      <path d="M85 58c5-2 9 1 9 5s-4 6-9 5" />
    </>
  );
}

function Bird() {
  return (
    <>
      <path d="M10 30l10-4c3-8 10-12 18-11 9 1 13 8 14 15 12 2 24 8 36 20-14 10-30 16-44 14-14-2-23-14-22-28l-12-6z" />
      <circle cx="30" cy="25" r="1.8" fill="currentColor" stroke="none" />
      <path d="M44 40c8-2 20 2 30 12-12 4-24 4-31-2M88 50l6 6M46 64v10M56 62v10" />
    </>
  );
}

function Quadruped() {
  return (
    <>
      <path d="M8 44c2-10 9-16 19-16l3-8 8 9c16-5 36-2 44 10 4 7 4 15 2 21" />
      <path d="M8 44c2 5 8 8 15 7 2 6 5 9 7 17M30 68h-7M84 60c-3 5-8 8-14 8H48M40 56v12" />
      <circle cx="20" cy="39" r="1.8" fill="currentColor" stroke="none" />
      <path d="M85 55c4-2 8-8 8-16" />
    </>
  );
}
