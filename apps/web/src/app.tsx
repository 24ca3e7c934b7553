/** Addresses of the pages. */
import { STAGES, type Stage, stageOf } from '@bonewright/casebook';
import { Redirect, Route, Switch } from 'wouter';
import { StartCase } from './admission/start-case.tsx';
import { BoardPage } from './board/board-page.tsx';
import { CarerPages } from './carer/carer-pages.tsx';
import { CasePage } from './case/case-page.tsx';
import { FormularyPage } from './doses/formulary-page.tsx';
import { RegisterPage } from './doses/register-page.tsx';
import { NumbersPage } from './numbers/numbers-page.tsx';
import { CarerArrival } from './people/carer-arrival.tsx';
import { Door } from './people/door.tsx';
import { MyPage } from './people/my-page.tsx';
import { PeoplePage } from './people/people-page.tsx';
import { FaultBoundary, FaultLine } from './shell/fault-boundary.tsx';
import { NotHere } from './shell/not-here.tsx';
import { useArrival } from './shell/use-arrival.ts';
import { StockPage } from './stock/stock-page.tsx';
import { useRole } from './sync/session.ts';
import { useCase } from './sync/use-case.ts';

const isStage = (word: string): word is Stage => STAGES.some((stage) => stage === word);

export function App() {
  useArrival();
  return (
    <FaultBoundary>
      <a className="skip" href="#main">
        To the work
      </a>
      <Route path="/carer" component={CarerArrival} />
      <Door>
        <Pages />
      </Door>
      <FaultLine />
    </FaultBoundary>
  );
}

/** A carer has pages of the own; everybody else those of the practice. */
function Pages() {
  if (useRole() === 'carer') return <CarerPages />;
  return (
    <Switch>
      <Route path="/carer">{null}</Route>
      <Route path="/people" component={PeoplePage} />
      <Route path="/me" component={MyPage} />
      <Route path="/" component={BoardPage} />
      <Route path="/formulary" component={FormularyPage} />
      <Route path="/register" component={RegisterPage} />
      <Route path="/stock" component={StockPage} />
      <Route path="/numbers" component={NumbersPage} />
      <Route path="/new" component={StartCase} />
      <Route path="/case/:caseId">{({ caseId }) => <ToItsStage caseId={caseId} />}</Route>
      <Route path="/case/:caseId/:stage">
        {({ caseId, stage }) =>
          isStage(stage) ? <CasePage key={caseId} caseId={caseId} stage={stage} /> : <ToItsStage caseId={caseId} />
        }
      </Route>
      <Route>
        <NotHere sentence="There is no page at this address." />
      </Route>
    </Switch>
  );
}

function ToItsStage({ caseId }: { readonly caseId: string }) {
  const { state } = useCase(caseId);
  return <Redirect to={`/case/${caseId}/${stageOf(state)}`} replace />;
}
