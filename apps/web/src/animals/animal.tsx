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
  [
    /bird|kestrel|hawk|buzzard|pigeon|dove|gull|crow|thrush|duck|swan|goose|swift|falcon|kite|magpie/i,
    <Bird key="b" />,
  ],
];

function Squirrel() {
  return (
    <>
      <path d="M25 21l1-9 6 8" />
      <path d="M25 21c-7 1-12 6-14 13-1 4 1 6 5 7 7 2 15 1 19-5 3-6 2-12-3-16" />
      <circle cx="22" cy="29" r="1.7" fill="currentColor" stroke="none" />
      <path d="M36 33c10 6 16 16 16 28 0 5-3 8-8 8H24" />
      <path d="M26 42c-4 7-5 16-2 27" />
      <path d="M28 48c-4 0-8 2-11 5l3 4 8-3" />
      <path d="M46 56c-8-3-15 3-14 13" />
      <path d="M52 58c6 1 8-4 6-13-3-12-3-22 3-30 7-9 23-8 26 3 2 9-7 16-13 11-4-4-1-10 4-9" />
      <path d="M46 69c23 4 36-9 34-27 0-5 2-8 5-13" />
    </>
  );
}

function Owl() {
  return (
    <>
      <path d="M28 12c-9 8-11 20-10 34 1 16 13 26 31 26s30-10 31-26c1-14-1-26-10-34-12-5-30-5-42 0z" />
      <path d="M28 12c4 6 14 6 18 12l3 5 3-5c4-6 14-6 18-12" />
      <circle cx="37" cy="28" r="8" />
      <circle cx="61" cy="28" r="8" />
      <circle cx="37" cy="28" r="2.6" fill="currentColor" stroke="none" />
      <circle cx="61" cy="28" r="2.6" fill="currentColor" stroke="none" />
      <path d="M49 33l-3.5 5 3.5 4 3.5-4z" />
      <path d="M28 44c-3 8-2 16 3 22M70 44c3 8 2 16-3 22" />
      <path d="M40 50l4 3 4-3M50 50l4 3 4-3M45 58l4 3 4-3" />
      <path d="M42 72v4M46 72v4M53 72v4M57 72v4" />
    </>
  );
}

function Hedgehog() {
  return (
    <>
      <path d="M30 34c6-12 17-19 30-18 19 1 33 15 33 33 0 7-3 13-8 17H34" />
      <path d="M30 34c-9 3-17 10-24 20-1 3 1 5 4 5 5 0 6 7 14 7h10" />
      <path d="M30 34c5 8 6 20 4 32" />
      <path d="M27 39c3-3 7-2 8 2" />
      <circle cx="21" cy="50" r="1.8" fill="currentColor" stroke="none" />
      <circle cx="6.5" cy="55" r="2.4" fill="currentColor" stroke="none" />
      <path d="M44 25l4 7M58 22l1 8M71 25l-3 7M82 34l-5 5M42 39l5 6M54 37l2 8M66 37l-2 8M79 46l-7 4M44 53l5 5M56 52l1 7M68 53l-3 6M82 57l-6 3" />
      <path d="M30 66v5M38 66v5M72 66v5M80 66v5" />
    </>
  );
}

function Rabbit() {
  return (
    <>
      <path d="M30 28c-5-7-6-17-3-24 5 4 8 13 8 22M35 26c1-9 5-17 11-21 2 8-1 17-7 24" />
      <path d="M30 28c-9 1-16 7-17 15 0 5 4 7 9 7 3 0 6 1 8 3" />
      <circle cx="25" cy="37" r="1.8" fill="currentColor" stroke="none" />
      <path d="M39 29c3 3 5 6 5 10 16-5 34 3 39 17 2 6 2 12 0 16H24" />
      <path d="M30 53c-3 6-4 12-3 19M24 72c-3 0-4-3-2-5l5-3" />
      <path d="M50 72c-4-12 3-22 13-22 10 0 15 8 14 16M50 72h14" />
      <path d="M84 60c3-5 10-4 10 1 0 4-4 7-9 6" />
    </>
  );
}

function Bird() {
  return (
    <>
      <path d="M8 28l11-3c3-8 10-13 18-12 9 1 14 8 15 15 12 3 24 10 38 26" />
      <path d="M8 28l11 5c-2 16 6 30 22 33 16 3 32-3 49-12" />
      <circle cx="29" cy="23" r="1.8" fill="currentColor" stroke="none" />
      <path d="M44 38c9-1 21 4 29 14-11 4-22 4-29-2-4-4-3-10 0-12z" />
      <path d="M43 66v9l-5 1M54 66v9l-5 1" />
    </>
  );
}

function Quadruped() {
  return (
    <>
      <path d="M26 22c2-5 7-5 8 0M26 22c-9 2-15 8-19 15 0 4 3 5 7 5 6 0 11 1 15 4" />
      <path d="M34 22c6 3 9 8 14 10 14 4 28 4 36 16 3 5 9 6 12 2" />
      <path d="M29 46c0 8 1 14 0 22h6l2-12c10 3 22 3 31 0l3 12h6c0-8 4-14 7-20" />
      <circle cx="21" cy="31" r="1.8" fill="currentColor" stroke="none" />
    </>
  );
}
