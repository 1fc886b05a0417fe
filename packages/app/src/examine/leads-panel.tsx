import { type LeadList, leadRules, type MethodReading } from '@evenhand/core/examine';
import { hands } from '@evenhand/core/ground/study';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import { countText, timeText } from '@evenhand/core/ground/units';
import { useEffect, useRef, useState } from 'react';
import { CommitField } from '../record/commit-field.tsx';
import type { RecordDesk } from '../record/desk.ts';
import { useDesk, useDocument } from '../record/use-desk.ts';
import { usePreferences } from '../shell/preferences.ts';
import { CriticalPanel } from './critical-panel.tsx';
import { leadsWith } from './examined.ts';
import { LeadItem } from './lead-item.tsx';
import { occurrencesOf } from './occurrences.ts';
import { hoursText, stakeText } from './stake-text.ts';

/** All leads of the method in the order of what they are worth; one is open at a time. */
export function LeadsPanel(props: {
  readonly desk: RecordDesk;
  readonly reading: MethodReading;
  readonly list: LeadList;
}) {
  const { desk, reading, list } = props;
  const [open, setOpen] = useState<string>();
  const [turn, setTurn] = useState(0);
  useDesk(desk);
  const motion = desk.selectedMotion;
  const touched =
    motion === undefined
      ? []
      : leadsWith(list, { hand: motion.hand, from: motion.start, to: motion.end }).map(({ id }) => id);
  const show = (id: string, index: number) => {
    const lead = list.leads.find((item) => item.id === id);
    const occurrences = lead === undefined ? [] : occurrencesOf(lead.traces);
    const chosen = occurrences[(index + occurrences.length) % Math.max(1, occurrences.length)];
    const cycle = chosen === undefined ? undefined : reading.cycles[chosen.cycle];
    if (chosen === undefined || cycle === undefined) return;
    setOpen(id);
    setTurn((index + occurrences.length) % occurrences.length);
    desk.score?.zoomTo(cycle.from, cycle.to);
    desk.showSpans(chosen.traces);
  };
  const close = () => {
    setOpen(undefined);
    desk.hideSpans();
  };
  const body = useRef<HTMLOListElement>(null);
  const [firstTouched] = touched;
  useEffect(() => {
    if (firstTouched === undefined) return;
    body.current
      ?.querySelector(`[data-lead="${CSS.escape(firstTouched)}"]`)
      ?.scrollIntoView({ block: 'nearest' });
  }, [firstTouched]);
  return (
    <div className="leads">
      <Joint desk={desk} list={list} reading={reading} />
      <SelectedMotion desk={desk} reading={reading} count={touched.length} />
      {list.leads.length === 0 ? (
        <p>
          No lead was found by the {leadRules.length} rules. That is no proof that the method is the best
          there is.
        </p>
      ) : (
        <ol ref={body} aria-label="Leads, those worth most first" onKeyDown={moveFocus}>
          {list.leads.map((lead, index) => (
            <LeadItem
              key={lead.id}
              desk={desk}
              reading={reading}
              lead={lead}
              rank={index + 1}
              open={open === lead.id}
              turn={turn}
              touched={touched.includes(lead.id)}
              onShow={(next) => show(lead.id, next)}
              onClose={close}
            />
          ))}
        </ol>
      )}
      <details className="whole-operation">
        <summary>Critical examination of the whole operation</summary>
        <CriticalPanel desk={desk} subject={{ kind: 'operation', method: reading.method.id }} />
      </details>
    </div>
  );
}

/** Up and down go from lead to lead. */
function moveFocus(event: React.KeyboardEvent<HTMLOListElement>): void {
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  const heads = [...event.currentTarget.querySelectorAll<HTMLButtonElement>('.lead-head')];
  const at = heads.indexOf(event.target as HTMLButtonElement);
  if (step === 0 || at < 0) return;
  event.preventDefault();
  event.stopPropagation();
  heads[at + step]?.focus();
}

/** What all leads are worth together, and what the hours need. */
function Joint(props: {
  readonly desk: RecordDesk;
  readonly list: LeadList;
  readonly reading: MethodReading;
}) {
  const { desk, list, reading } = props;
  const { unit } = usePreferences();
  const { study } = useDocument(desk);
  const hours = hoursText(list.joint.hoursAYear);
  const setVolume = (text: string) => {
    const { unitsAYear: _, ...rest } = study.operation;
    const units = Number(text.replace(/[\s ]/g, ''));
    if (text.trim() !== '' && (!Number.isInteger(units) || units < 0 || units > 1e12))
      return desk.say('Units a year: write a whole number, such as 180000.');
    const operation = text.trim() === '' ? rest : { ...study.operation, unitsAYear: units };
    desk.dispatch({ type: 'study.change', to: { operation }, was: { operation: study.operation } });
  };
  return (
    <header className="joint">
      <p>
        <strong>{countText(list.leads.length, 'lead')}</strong>, all together{' '}
        <strong className="number">{stakeText(list.joint.atStake, unit)}</strong>
        {hours === undefined ? null : `, ${hours}`}. A mean cycle takes {timeText(list.cycle, unit)}.
      </p>
      <details>
        <summary>How this is counted</summary>
        <p>{list.joint.rule}</p>
        {reading.notes.map((note) => (
          <p key={note.code}>{note.message}</p>
        ))}
      </details>
      <div className="fields volume">
        <CommitField
          label="Units a year"
          value={study.operation.unitsAYear === undefined ? '' : String(study.operation.unitsAYear)}
          placeholder="for hours a year"
          onCommit={setVolume}
        />
      </div>
    </header>
  );
}

/** The motion that is selected on the score: how many leads it is part of, and its own examination. */
function SelectedMotion(props: {
  readonly desk: RecordDesk;
  readonly reading: MethodReading;
  readonly count: number;
}) {
  const { desk, reading, count } = props;
  const motion = desk.selectedMotion;
  if (motion === undefined || !hands.includes(motion.hand)) return null;
  const facts = motionFactsOf(motion.item.kind);
  return (
    <section className="selected-motion" aria-label="Selected motion">
      <p role="status">
        Selected: {facts.name} {motion.item.object ?? ''}, {motion.hand} hand.{' '}
        <strong>{count === 0 ? 'No lead' : countText(count, 'lead')} with this motion.</strong>
      </p>
      <details key={motion.item.id}>
        <summary>Critical examination of this motion</summary>
        <CriticalPanel
          desk={desk}
          subject={{ kind: 'motion', method: reading.method.id, hand: motion.hand, motion: motion.item.id }}
        />
      </details>
    </section>
  );
}
