import './define.css';
import { type ReactNode, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { DeskMessage } from '../record/desk-message.tsx';
import { useDesk, useDocument } from '../record/use-desk.ts';
import type { Route } from '../shell/route.ts';
import { CalculatorsView } from './calculators/calculators-view.tsx';
import { DefineBar, type DefineView } from './define-bar.tsx';
import { OpenSheet } from './open-sheet.tsx';
import { PrintSheet } from './print-sheet.tsx';
import { useDefineKeys } from './use-define-keys.ts';
import { useSheet } from './use-sheet.ts';

/** The define desk: the study sheet as it prints, with its standard, or the calculators of the step. */
export function DefineDeskView(props: {
  readonly desk: RecordDesk;
  readonly route: Extract<Route, { page: 'study' }>;
}) {
  const { desk, route } = props;
  const { message } = useDesk(desk);
  const { study } = useDocument(desk);
  const [view, setView] = useState<DefineView>('sheet');
  useDefineKeys(desk);
  const studies = study.timeStudies ?? [];
  const open = studies.find(({ id }) => id === route.open) ?? studies[0];
  const shown = useSheet(study, open);
  return (
    <main className="define-desk">
      <DefineBar desk={desk} route={route} study={study} open={open} view={view} onView={setView}>
        {open === undefined || shown.sheet === undefined || view !== 'sheet' ? null : (
          <PrintSheet study={study} sheet={shown.sheet} />
        )}
      </DefineBar>
      {view === 'calculators' ? (
        <CalculatorsView />
      ) : open === undefined ? (
        <Empty>
          No time study yet. Choose <strong>New …</strong> to take the times of a marked film, or to write,
          paste or clock readings yourself.
        </Empty>
      ) : shown.sheet === undefined ? (
        <Empty>Working the sheet out …</Empty>
      ) : (
        <OpenSheet
          key={open.id}
          desk={desk}
          study={study}
          timeStudy={open}
          sheet={shown.sheet}
          stale={shown.stale}
          bootstrap={shown.bootstrap}
        />
      )}
      <DeskMessage text={message} onDismiss={() => desk.say(undefined)} />
    </main>
  );
}

function Empty(props: { readonly children: ReactNode }) {
  return (
    <div className="define-empty" role="status">
      <p>{props.children}</p>
    </div>
  );
}
