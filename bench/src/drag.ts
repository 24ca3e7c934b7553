/**
 * What dragging a pin costs the page's thread in a real browser: all work from one move of the hand to the new margins
 * (processor time of every task of that thread), and how long after the hand rests the full figures are in. The pages
 * must have been built: `npm start` or `npm test` does.
 */
import { DESK, launch } from '@bonewright/e2e/browser';
import { freshDemonstration } from '@bonewright/e2e/demonstration';
import { startServer } from '@bonewright/e2e/server-process';
import type { Row } from './row.ts';

const CASE = 'demo-squirrel';
const MOVES = 120;
/** Long enough for the answer to a move to be drawn before the next. */
const BETWEEN_MS = 50;
const DRAGS = 5;
const REACH_PX = 30;

type Page = Awaited<ReturnType<Awaited<ReturnType<typeof launch>>['newPage']>>;

export async function benchDrag(): Promise<readonly Row[]> {
  const server = await startServer();
  const browser = await launch();
  try {
    await freshDemonstration(server.address, CASE);
    const page = await browser.newPage({ viewport: DESK });
    await page.goto(`${server.address}/case/${CASE}/plan`);
    await settled(page);
    const work = (await moves(page)).toSorted((a, b) => a - b);
    const rests: number[] = [];
    for (let drag = 0; drag < DRAGS; drag += 1) rests.push(await fullAfterRest(page, drag));
    const share = (part: number) => work[Math.floor(part * (work.length - 1))]!;
    return [
      {
        what: `drag a pin, work on the page's thread for a move, half of ${MOVES} below`,
        figure: share(0.5),
        unit: 'ms',
      },
      { what: 'the same, 95 in 100 below', figure: share(0.95), unit: 'ms', goal: 'under 16' },
      {
        what: `full figures after the hand lets go, longest of ${DRAGS}`,
        figure: Math.max(...rests),
        unit: 'ms',
        goal: 'under 300',
      },
    ];
  } finally {
    await browser.close();
    await server.stop();
  }
}

const full = (page: Page) => page.locator('[data-exactness="full"]').waitFor();

/** Full figures are in, and the what-ifs that follow them. */
async function settled(page: Page): Promise<void> {
  await full(page);
  await page
    .getByText('P2 breaks')
    .or(page.getByText(/breaks$/))
    .first()
    .waitFor({ timeout: 60_000 });
}

async function takeHold(page: Page): Promise<readonly [number, number]> {
  const box = await page.locator('[data-pin="2"] .pin-grip').first().boundingBox();
  if (!box) throw new Error('no third pin on the ruler');
  const at = [box.x + box.width / 2, box.y + box.height / 2] as const;
  await page.mouse.move(...at);
  await page.mouse.down();
  return at;
}

async function moves(page: Page): Promise<number[]> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
  const spentMs = async () => {
    const { metrics } = await devtools.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0);
  };
  const [x, y] = await takeHold(page);
  const work: number[] = [];
  for (let move = 0; move < MOVES; move += 1) {
    const before = await spentMs();
    await page.mouse.move(x + REACH_PX * Math.sin(move / 12), y);
    await page.waitForTimeout(BETWEEN_MS);
    work.push((await spentMs()) - before);
  }
  await page.mouse.up();
  await devtools.detach();
  await settled(page);
  return work;
}

async function fullAfterRest(page: Page, drag: number): Promise<number> {
  const [x, y] = await takeHold(page);
  const way = drag % 2 === 0 ? 1 : -1;
  for (let step = 1; step <= 10; step += 1) await page.mouse.move(x + way * step, y);
  await page.locator('[data-exactness="quick"]').waitFor();
  await page.mouse.up();
  const start = performance.now();
  await full(page);
  const took = performance.now() - start;
  await settled(page);
  return took;
}
