import { type Lead, type LeadList, leadRules, type MethodReading } from '@evenhand/core/examine';
import { type KeyboardEvent as ListKey, useEffect, useMemo, useRef, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { useDesk } from '../record/use-desk.ts';
import { isFree } from '../record/use-desk-keys.ts';
import { CriticalDetails } from './critical-panel.tsx';
import { leadsWith } from './examined.ts';
import { LeadItem } from './lead-item.tsx';
import { LeadsHead } from './leads-head.tsx';
import { NotedList } from './noted-list.tsx';
import { occurrencesOf, windowOf } from './occurrences.ts';
import { SelectedMotion } from './selected-motion.tsx';

interface Props {
  readonly desk: RecordDesk;
  readonly reading: MethodReading;
  readonly list: LeadList;
}

/** All leads of the method in the order of what they are worth; one is open at a time. */
export function LeadsPanel(props: Props) {
  const { desk, reading, list } = props;
  const chosen = useChosenLead(props);
  const touched = useTouched(props);
  const body = useRef<HTMLOListElement>(null);
  const bring = (id: string | undefined) =>
    id === undefined ? undefined : body.current?.querySelector(`[data-lead="${CSS.escape(id)}"]`);
  const [firstTouched] = touched;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another motion scrolls the list
  useEffect(() => {
    bring(firstTouched)?.scrollIntoView({ block: 'nearest' });
  }, [firstTouched]);
  const goToNext = () => {
    const heads = touched.flatMap((id) => bring(id)?.querySelector<HTMLElement>('.lead-head') ?? []);
    const at = heads.findIndex((head) => head === document.activeElement || head.ariaExpanded === 'true');
    heads[(at + 1) % Math.max(1, heads.length)]?.focus();
  };
  return (
    <div className="leads">
      <LeadsHead desk={desk} list={list} reading={reading} />
      <SelectedMotion desk={desk} reading={reading} count={touched.length} onNext={goToNext} />
      {list.leads.length === 0 ? (
        <p>
          No lead found by the {leadRules.length} rules. That is no proof that this is the best method: the
          rules see motions and their times, not why the work is done at all.
        </p>
      ) : (
        <ol ref={body} aria-label="Leads, those worth most first" data-arrows onKeyDown={moveFocus}>
          {list.leads.map((lead, index) => (
            <LeadItem
              key={lead.id}
              desk={desk}
              reading={reading}
              lead={lead}
              rank={index + 1}
              open={chosen.lead?.id === lead.id}
              occurrences={chosen.lead?.id === lead.id ? chosen.occurrences : []}
              turn={chosen.turn}
              touched={touched.includes(lead.id)}
              onShow={(turn) => chosen.show(lead, turn)}
              onClose={chosen.close}
            />
          ))}
        </ol>
      )}
      <CriticalDetails
        desk={desk}
        what="of the whole operation"
        subject={{ kind: 'operation', method: reading.method.id }}
      />
      <NotedList desk={desk} methodId={reading.method.id} />
    </div>
  );
}

/** The open lead, and which of its occurrences is on the film. */
function useChosenLead({ desk, reading, list }: Props) {
  const [state, setState] = useState<{ readonly id: string; readonly turn: number }>();
  const lead = list.leads.find(({ id }) => id === state?.id);
  const occurrences = useMemo(
    () => (lead === undefined ? [] : occurrencesOf(lead.traces, reading.clock)),
    [lead, reading],
  );
  const turn = Math.min(state?.turn ?? 0, Math.max(0, occurrences.length - 1));
  const show = (next: Lead, wanted: number) => {
    const all = next.id === lead?.id ? occurrences : occurrencesOf(next.traces, reading.clock);
    const at = all.length === 0 ? 0 : (wanted + all.length) % all.length;
    setState({ id: next.id, turn: at });
    const shown = all[at];
    if (shown === undefined) return desk.hideSpans();
    const window = windowOf(reading, shown);
    desk.score?.zoomTo(window.from, window.to);
    const near = next.traces.filter(
      ({ cycle, from, to }) => cycle === shown.cycle && from < window.to && to > window.from,
    );
    desk.showSpans(near, shown);
  };
  const close = () => {
    setState(undefined);
    desk.hideSpans();
  };
  const gone = state !== undefined && lead === undefined;
  useEffect(() => {
    if (gone) desk.hideSpans();
  }, [gone, desk]);
  const stepTo = useRef<(step: 1 | -1) => boolean>(() => false);
  stepTo.current = (step) => {
    if (lead !== undefined) show(lead, turn + step);
    return lead !== undefined;
  };
  useOccurrenceKeys(stepTo);
  return { lead, occurrences, turn, show, close };
}

/** Comma and full stop, where nothing is marked: the occurrence before, the next one. */
function useOccurrenceKeys(stepTo: { readonly current: (step: 1 | -1) => boolean }): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const step = event.code === 'Period' ? 1 : event.code === 'Comma' ? -1 : undefined;
      const plain = !event.ctrlKey && !event.metaKey && !event.altKey && !event.shiftKey;
      if (step !== undefined && plain && isFree(event) && stepTo.current(step)) event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [stepTo]);
}

/** The leads that the selected motion is part of, by their ids, those worth most first. */
function useTouched({ desk, list }: Props): readonly string[] {
  const { selection } = useDesk(desk);
  const motion = selection === undefined ? undefined : desk.selectedMotion;
  const { hand, start, end } = motion ?? {};
  return useMemo(
    () =>
      hand === undefined || start === undefined || end === undefined
        ? []
        : leadsWith(list, { hand, from: start, to: end }).map(({ id }) => id),
    [list, hand, start, end],
  );
}

/** Up and down go from lead to lead. */
function moveFocus(event: ListKey<HTMLOListElement>): void {
  const heads = [...event.currentTarget.querySelectorAll<HTMLButtonElement>('.lead-head')];
  const inside = event.target instanceof Element ? event.target.closest('[data-lead]') : null;
  const at = heads.findIndex((head) => inside?.contains(head));
  if (at < 0 || event.target instanceof HTMLTextAreaElement) return;
  const goal =
    event.key === 'ArrowDown'
      ? at + 1
      : event.key === 'ArrowUp'
        ? at - 1
        : event.key === 'Home'
          ? 0
          : event.key === 'End'
            ? heads.length - 1
            : undefined;
  if (goal === undefined) return;
  event.preventDefault();
  heads[Math.max(0, Math.min(goal, heads.length - 1))]?.focus();
}
