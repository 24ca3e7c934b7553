/** The thread that assesses one construct and draws a paper of it, so that no request waits for it. */
import { parentPort, workerData } from 'node:worker_threads';
import { assess, readCase } from '@bonewright/construct';
import { InputError } from '@bonewright/fault';
import { PAPERS } from '@bonewright/sheet';
import type { Printed, SheetRequest } from './sheet-in-thread.ts';

const printed = await print(workerData);
parentPort?.postMessage(printed, 'pdf' in printed ? [printed.pdf.buffer] : []);

async function print({ paper, caseFile, title, used, version, madeAt }: SheetRequest): Promise<Printed> {
  try {
    const patientCase = readCase(caseFile);
    const plan = assess(patientCase);
    const pdf = await PAPERS[paper]({ patientCase, plan, title: { ...title, version, made: new Date(madeAt) }, used });
    return { pdf: Uint8Array.from(pdf) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { what, path, hint } = error;
    return { refused: { what, path: path && `caseFile.${path}`, hint } };
  }
}
