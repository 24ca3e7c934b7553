/** All that a carer sees: the own patients, one page each. No plan, no dose to write, nobody else's patients. */
import './carer.css';
import { Route, Switch } from 'wouter';
import { NotHere } from '../shell/not-here.tsx';
import { CarerPatient } from './carer-patient.tsx';
import { CarerPatients } from './carer-patients.tsx';

export function CarerPages() {
  return (
    <Switch>
      <Route path="/" component={CarerPatients} />
      <Route path="/case/:caseId">{({ caseId }) => <CarerPatient key={caseId} caseId={caseId} />}</Route>
      <Route path="/case/:caseId/:stage">{({ caseId }) => <CarerPatient key={caseId} caseId={caseId} />}</Route>
      <Route>
        <NotHere sentence="This page is for the practice: an owner or the ward. Your patients are at the start." />
      </Route>
    </Switch>
  );
}
