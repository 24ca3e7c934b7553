/**
 * One hedgehog from admission to release through the pages, its calendar pressed into minutes; the theatre's pins come
 * over the same door as a tablet's entries. Then its papers are read, and a carer sees what a carer may.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from './accessible.ts';
import { DESK, launch, PHONE } from './browser.ts';
import { type ServerProcess, startServer } from './server-process.ts';

const SHOTS = process.env.BONEWRIGHT_SHOTS;

let browser: Browser;
let server: ServerProcess;
let page: Page;
let caseId = '';
let papers = '';
const faults: string[] = [];

beforeAll(async () => {
  papers = mkdtempSync(join(tmpdir(), 'bonewright-papers-'));
  browser = await launch();
  server = await startServer('--empty');
  page = await browser.newPage({ viewport: DESK });
  page.on('pageerror', (error) => faults.push(error.message));
}, 120_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(papers, { recursive: true, force: true });
});

const open = async (stage: string, sign: string): Promise<void> => {
  await page.goto(`${server.address}/case/${caseId}/${stage}`);
  await page.getByRole('heading', { name: sign, exact: true }).waitFor();
};

const form = (name: string) => page.getByRole('form', { name, exact: true });
const choose = (name: string, group: string, word: string) =>
  form(name).getByRole('group', { name: group }).getByText(word, { exact: true }).click();
const press = (word: string) => page.getByRole('button', { name: word, exact: true }).click();
const saved = () => page.getByText(/, saved/).waitFor();
const inStory = (words: string | RegExp) => page.locator('.story').getByText(words).first().waitFor();

/** Fits and is accessible, at a desk and on a phone. */
async function look(name: string): Promise<void> {
  for (const [size, viewport] of Object.entries({ desk: DESK, phone: PHONE })) {
    await page.setViewportSize(viewport);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), name).toBeLessThanOrEqual(0);
    expect(await violations(page), `${name} ${size}`).toEqual([]);
    if (SHOTS) await page.screenshot({ path: `${SHOTS}/${name}-${size}.png`, fullPage: true });
  }
  await page.setViewportSize(DESK);
}

/** The words of a paper, as the server makes it from the record. */
async function wordsOf(paper: string): Promise<string> {
  const answer = await page.request.get(`${server.address}/api/cases/${caseId}/papers/${paper}?east=0`);
  expect(answer.status(), paper).toBe(200);
  const file = join(papers, `${paper}.pdf`);
  writeFileSync(file, await answer.body());
  if (SHOTS) spawnSync('pdftoppm', ['-r', '70', '-png', file, join(SHOTS, paper)]);
  return spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).stdout.replaceAll(/\s+/g, ' ');
}

test('admission: what is half typed outlives a reload; recorded, it is there in short; the decision is signed', async () => {
  await page.goto(`${server.address}/new`);
  await page.getByLabel('Species').fill('hedgehog');
  await page.getByLabel('Mass').fill('742');
  await page.getByLabel('Broken bone').fill('femur');
  await page.getByRole('group', { name: 'Side' }).getByText('left').click();
  await page.getByLabel('Signed by').fill('R. Fenn');
  await press('Start the case');
  await page.waitForURL(/\/case\/.*\/films/);
  caseId = new URL(page.url()).pathname.split('/')[2] ?? '';
  await saved();
  await open('admission', 'In short');
  await form('Admission').getByLabel('Where it was found').fill('verge of Mill Lane, by the bridge');
  await page.reload();
  expect(await form('Admission').getByLabel('Where it was found').inputValue()).toContain('Mill Lane');
  await form('Admission')
    .getByLabel(/Latitude/)
    .fill('52.31');
  await press('Record the admission');
  await form('Admission').getByText('A place has both degrees, or neither.').waitFor();
  await form('Admission')
    .getByLabel(/Longitude/)
    .fill('-1.87');
  await choose('Admission', 'Skin over the break', 'open');
  await form('Admission').getByLabel('Finder', { exact: true }).fill('J. Reed');
  await form('Admission').getByLabel('Rescue', { exact: true }).fill('Thornbeck Wildlife Rescue');
  await form('Admission').getByLabel('How the finder is reached').fill('01632 960 002');
  await press('Record the admission');
  await page.locator('.brief').getByText('Open: the skin over the break is broken.').waitFor();
  await page.getByText('No published series of a femur in a hedgehog was found').waitFor();
  await choose('Decision', 'Decided', 'operate');
  await form('Decision').getByLabel('By whom').fill('R. Fenn and Thornbeck');
  await press('Record the decision');
  await inStory('Decided by R. Fenn and Thornbeck: operate.');
  await look('admission');
}, 120_000);

test('recovery: pins in, a weight with the frame on, aftercare with a gap asks why, a question waits on the board', async () => {
  await saved();
  const sent = await page.evaluate(async (id) => {
    const { events } = await (await fetch(`/api/cases/${id}/events`)).json();
    const seq = Math.max(...events.map((event: { seq: number }) => event.seq));
    const pin = (n: number, sMm: number) => ({
      schema: 1,
      id: `e2e-pin-0000${n}`,
      caseId: id,
      seq: seq + n,
      at: new Date().toISOString(),
      by: 'R. Fenn',
      kind: 'pin-placed',
      payload: { pin: n, sMm, aboutDeg: 0, tiltDeg: 0, cortices: 2 },
    });
    const body = JSON.stringify({ events: [pin(1, 8), pin(2, 30)] });
    return (
      await fetch(`/api/cases/${id}/events`, { method: 'POST', headers: { 'content-type': 'application/json' }, body })
    ).status;
  }, caseId);
  expect(sent).toBe(200);
  await open('recovery', 'Weigh');
  await form('Weigh').getByLabel(/Mass/).fill('771');
  await choose('Weigh', 'Frame', 'weighed with it');
  await press('Record the weight');
  await inStory('Weighed: 771 g with the frame.');
  await form('Aftercare').getByLabel('Task 1').fill('Weigh');
  await form('Aftercare').getByLabel('When', { exact: true }).first().fill('every morning before food');
  await press('Sign the aftercare');
  await page.getByRole('dialog').getByText('No telephone number.').waitFor();
  await page.getByRole('dialog').getByRole('button', { name: 'Go back' }).click();
  await form('Aftercare').getByLabel('Telephone').fill('01632 960 141');
  await form('Aftercare').getByLabel('Next look on').fill('2026-01-05');
  await press('Sign the aftercare');
  await page.getByRole('link', { name: 'Ring 01632 960 141' }).waitFor();
  await form('Question to the vet').getByLabel('Question').fill('It scratches at the frame?');
  await press('Ask');
  await inStory('Question to the vet: It scratches at the frame?');
  await page.getByLabel('What it shows').first().fill('left hind from the side');
  const png = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
  const photo = { name: 'leg.png', mimeType: 'image/png', buffer: Buffer.from(png, 'base64') };
  await page.getByLabel('Take or choose a photograph').setInputFiles(photo);
  await inStory('Photograph added: left hind from the side.');
  await page.getByAltText('Photograph: left hind from the side').waitFor();
  await look('recovery');
  await saved();
  await page.goto(server.address);
  await page.getByText('Answer: It scratches at the frame?').waitFor();
  await page.getByText('overdue, Mon 5 Jan').waitFor();
  await look('board');
}, 120_000);

test('rechecks: pin sites and limb in words, the frame comes off on two signed facts', async () => {
  await open('rechecks', 'Pin sites');
  await choose('Pin sites', 'P1', 'dry');
  await choose('Pin sites', 'P2', 'swollen');
  await choose('Pin sites', 'How it was looked at', 'at the animal');
  await press('Record the pin sites');
  await page.locator('.seen-list').getByText('P2: swollen').waitFor();
  await choose('Use of the limb', 'The limb is used', 'some weight');
  await press('Record the use');
  await choose('Decision on the frame', 'The frame', 'comes off');
  await press('Sign the decision');
  await page.getByRole('dialog').getByText('Nobody signed that it is united by film.').waitFor();
  await page.getByRole('dialog').getByRole('button', { name: 'Go back' }).click();
  for (const [by, asks] of [
    ['hand', 'Firm under the hand, no pain'],
    ['film', 'Bone across on the film'],
  ] as const) {
    await choose(`Union by ${by}`, asks, 'yes');
    await press(`Sign it by ${by}`);
    await inStory(`Union by ${by}: united.`);
  }
  await press('Sign the decision');
  await inStory('The frame is to come off.');
  await choose('Frame taken off', 'All that went in is out', 'yes, counted');
  await press('Record that it is off');
  await page.getByRole('heading', { name: 'After the frame came off' }).waitFor();
  await page.getByRole('group', { name: 'Film after removal, both views' }).getByText('yes', { exact: true }).click();
  await inStory(/film after removal: yes/);
  await look('rechecks');
}, 120_000);

/** All that a carer can press. */
const CARER_DOES = ['Done', 'Record the weight', 'Record the meal', 'Ask'];

test('a carer by a personal link weighs, feeds, asks and looks; signs nothing and sees no dose entry', async () => {
  await page.goto(`${server.address}/people`);
  await page.getByLabel('Name').fill('R. Fenn');
  await page.getByLabel('Password').fill('hedge row under stars');
  await press('Make the first account');
  await page.getByRole('heading', { name: 'Accounts' }).waitFor();
  await page.getByLabel('Name').fill('Thornbeck ward');
  await page.getByRole('group', { name: 'Role', exact: true }).getByText('carer').click();
  await press('Make the account');
  await page.getByText('Hand this to Thornbeck ward').waitFor();
  await page.reload();
  await page.getByRole('checkbox', { name: /hedgehog/ }).check();
  await press('Make a link for Thornbeck ward');
  const address = (await page.getByText('/carer#').textContent()) ?? '';
  const carer = await (await browser.newContext({ viewport: PHONE })).newPage();
  await carer.goto(address);
  await carer.getByText('Hedgehog').first().waitFor();
  const buttons = async (stage: string, heading: string) => {
    await carer.goto(`${server.address}/case/${caseId}/${stage}`);
    await carer.getByRole('heading', { name: heading, exact: true }).waitFor();
    expect(await carer.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(await violations(carer), stage).toEqual([]);
    if (SHOTS) await carer.screenshot({ path: `${SHOTS}/carer-${stage}.png`, fullPage: true });
    const words = await carer.locator('main').getByRole('button').allTextContents();
    return words.filter((word) => word !== '' && !/^All \d+ entries$/.test(word));
  };
  // Whatever address is typed, a carer stands on the page of the own patient.
  for (const stage of ['recovery', 'rechecks', 'release', 'admission', 'plan', 'theatre']) {
    expect(await buttons(stage, 'Weigh'), stage).toEqual(CARER_DOES);
    expect(await carer.getByRole('heading', { name: /dose/i }).count()).toBe(0);
  }
  await carer.close();
}, 120_000);

test('release: limits chosen, dusk computed, what is not met asks for a reason, two outcomes', async () => {
  await open('recovery', 'Weigh');
  await form('Weigh').getByLabel(/Mass/).fill('750');
  await press('Record the weight');
  await inStory('Weighed: 750 g.');
  await open('release', 'Ready to go back');
  await page.getByText('tonight').waitFor();
  await page.getByRole('group', { name: 'Which mass do we go by?' }).getByText('at least 600 g').click();
  await page.getByRole('group', { name: 'Above which night temperature?' }).getByText('above 0 °C').click();
  await form('Forecast')
    .getByLabel(/Lowest/)
    .fill('4');
  await press('Record the forecast');
  const lines = page.locator('.ready-list').first().getByRole('group');
  for (let i = 0; i < (await lines.count()); i += 1)
    if (!(await lines.nth(i).textContent())?.startsWith('Gait filmed'))
      await lines.nth(i).getByText('yes', { exact: true }).click();
  await choose('Release', 'Where it was found', 'yes');
  await form('Release').getByLabel('What went with it').fill('a box with straw');
  await press('Record the release');
  await page.getByRole('dialog').getByText('Gait filmed and looked at slowly: not looked.').waitFor();
  expect(await page.getByRole('dialog').getByRole('listitem').count()).toBe(1);
  await page.getByRole('dialog').getByLabel('Why').fill('it went in the dark');
  await page.getByRole('dialog').getByRole('button', { name: 'Record the release' }).click();
  await page
    .getByText(/What was not met: it went in the dark/)
    .first()
    .waitFor();
  await choose('Outcome of the bone', 'The bone', 'healed');
  await press('Record it of the bone');
  await inStory('Outcome of the bone: healed.');
  await choose('Outcome of the patient', 'The patient', 'released');
  await press('Record it of the patient');
  await inStory('Outcome of the patient: released.');
  await look('release');
  await saved();
  await page.goto(server.address);
  await page.getByRole('heading', { name: 'Patients' }).waitFor();
  await page.getByText('Answer: It scratches').waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
}, 120_000);

test('papers say what the record says, and no more', async () => {
  const discharge = await wordsOf('discharge');
  expect(discharge).toContain('Ring 01632 960 141');
  expect(discharge).toContain('Weigh: every morning before food');
  expect(discharge).toContain('rests on opinion');
  const release = await wordsOf('release');
  expect(release).toContain('Chosen by R. Fenn: mass for release in winter, 600 g');
  expect(release).toContain('Reason for what was not met: it went in the dark.');
  expect(await wordsOf('referral-back')).toMatch(/external fixator of 2 pins.*The frame came off/);
  expect(await wordsOf('rescue-report')).toContain('To Thornbeck Wildlife Rescue');
  const thanks = await wordsOf('finder-thanks');
  expect(thanks).toContain('To J. Reed');
  expect(thanks).not.toMatch(/01632|Thornbeck/);
}, 60_000);
