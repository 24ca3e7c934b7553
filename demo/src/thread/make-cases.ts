/** Makes the demonstration's cases one after another and posts each as it is done. One that fails does not keep back the rest. */
import { parentPort, workerData } from 'node:worker_threads';
import { demoCase } from '../cases.ts';
import { filmsOf } from '../films/index.ts';
import { patients } from '../patients.ts';

for (const patient of patients) {
  try {
    parentPort?.postMessage(demoCase(patient, filmsOf(patient.key), new Date(workerData.now)));
  } catch (error) {
    parentPort?.postMessage({ fault: `${patient.key}: ${String(error)}` });
  }
}
