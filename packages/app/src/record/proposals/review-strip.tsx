import './proposals.css';
import { findItem, type Method } from '@evenhand/core/ground/study';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import { countText, percentText, timeText } from '@evenhand/core/ground/units';
import { confidenceText, type ReviewItem, reviewOrder } from '@evenhand/core/record';
import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { usePreferences } from '../../shell/preferences.ts';
import type { RecordDesk } from '../desk.ts';
import { leftWords } from '../left-words.ts';
import { CommandButton } from '../transport.tsx';
import { useDesk, useDocument } from '../use-desk.ts';
import type { Remark } from './ask-proposal.ts';
import type { ProposalsState, Proposing } from './proposals.ts';

const limits = [0.99, 0.95, 0.9, 0.8, 0.7, 0.5, 0] as const;

/** Between film and score: what is proposed, and the way through it. */
export function ReviewStrip(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { proposals } = desk;
  useDesk(desk);
  useDocument(desk);
  const state = useSyncExternalStore(proposals.subscribe, proposals.state);
  const { method } = desk;
  const order = useMemo(() => (method === undefined ? [] : reviewOrder(method)), [method]);
  if (method === undefined || method.kind === 'composed') return null;
  if (order.length === 0 && proposals.track === undefined && !state.working && state.remarks.length === 0)
    return null;
  return (
    <section className="review-strip" aria-label="Proposals">
      <ProposePart desk={desk} state={state} again={order.length > 0} />
      {order.length === 0 ? null : <ReviewPart desk={desk} method={method} order={order} state={state} />}
      {state.remarks.length === 0 ? null : (
        <Remarks
          desk={desk}
          remarks={state.remarks}
          brief={order.length > 0 && state.current !== undefined}
        />
      )}
    </section>
  );
}

interface Part {
  readonly desk: RecordDesk;
  readonly state: ProposalsState;
}

function ProposePart({ desk, state, again }: Part & { readonly again: boolean }) {
  if (state.working) return <Working progress={state.progress} onStop={() => desk.proposals.stop()} />;
  if (desk.proposals.track === undefined) return null;
  const text = again ? 'Propose anew' : 'Propose the other cycles';
  return (
    <div className="moves">
      <CommandButton desk={desk} id="proposals.propose" text={text} strong={!again} />
    </div>
  );
}

interface WorkingParts {
  readonly progress: Proposing | undefined;
  readonly onStop: () => void;
}

function Working({ progress, onStop }: WorkingParts) {
  const waited = useSecondsSince(progress);
  const left = progress === undefined ? undefined : progress.secondsLeft - waited;
  return (
    <div className="moves">
      <progress value={progress?.share} max={1} aria-label="Looking for the other cycles" />
      <span role="status">Looking for the other cycles along the track</span>
      <span className="soft" aria-hidden="true">
        {left === undefined || progress === undefined
          ? `${waited} s`
          : `${percentText(progress.share, 0)}, about ${leftWords(left)} left`}
      </span>
      <button type="button" onClick={onStop}>
        Stop
      </button>
    </div>
  );
}

/** Whole seconds since something changed. */
function useSecondsSince(what: unknown): number {
  const [{ since, seconds }, set] = useState({ since: what, seconds: 0 });
  if (since !== what) set({ since: what, seconds: 0 });
  useEffect(() => {
    const timer = setInterval(() => set((was) => ({ ...was, seconds: was.seconds + 1 })), 1000);
    return () => clearInterval(timer);
  }, []);
  return since === what ? seconds : 0;
}

interface Review extends Part {
  readonly method: Method;
  readonly order: readonly ReviewItem[];
}

function ReviewPart({ desk, method, order, state }: Review) {
  const { proposals } = desk;
  const { current, above } = state;
  const sure = order.filter(({ confidence }) => confidence >= above).length;
  return (
    <>
      <p className="asked">
        <strong>{order.length} to be confirmed</strong>
        {current === undefined ? null : <Asked desk={desk} method={method} item={current} />}
      </p>
      <div className="moves">
        <CommandButton
          desk={desk}
          id="proposals.next"
          text={current === undefined ? 'Show the least certain' : 'Next'}
          strong={current === undefined}
        />
        {current === undefined ? null : (
          <>
            <CommandButton desk={desk} id="proposals.confirm" text="Confirm" strong />
            <CommandButton desk={desk} id="proposals.refuse" text="Refuse" />
          </>
        )}
        <CommandButton desk={desk} id="proposals.confirm-cycle" text="Confirm the cycle" />
        <CommandButton desk={desk} id="proposals.refuse-cycle" text="Refuse the cycle" />
      </div>
      <div className="moves">
        <CommandButton desk={desk} id="proposals.confirm-above" text={`Confirm all ${sure} from`} />
        <label>
          <span className="hidden">Confirm all from this certainty on</span>
          <select value={above} onChange={(event) => proposals.setAbove(Number(event.target.value))}>
            {limits.map((limit) => (
              <option key={limit} value={limit}>
                {limit === 0 ? 'any certainty' : percentText(limit, 0)}
              </option>
            ))}
          </select>
        </label>
        <CommandButton desk={desk} id="proposals.clear" text="Take all out" />
      </div>
    </>
  );
}

/** What is asked about, in words: "right hand, G grasp ring at 12.34 s: uncertain, 61 %". */
function Asked(props: { readonly desk: RecordDesk; readonly method: Method; readonly item: ReviewItem }) {
  const { desk, method, item } = props;
  const { unit } = usePreferences();
  const { clock } = desk;
  const found = findItem(method[item.row] as Method['left'], item.id);
  if (found === undefined || clock === undefined)
    return <span className="soft">gone; go on to the next</span>;
  const at = timeText(clock.timeOf(found.start), unit);
  const open = found.item.said === 'proposed';
  const what =
    item.row === 'cycles'
      ? `cycle ${found.index + 1} begins`
      : `${item.row} hand, ${motionWords(found.item)} begins`;
  return (
    <span className="what">
      {what} at {at}: {open ? confidenceText(found.item.confidence) : 'yours now'}
    </span>
  );
}

function motionWords({ kind, object }: Method['left']['items'][number]): string {
  const facts = motionFactsOf(kind);
  return `${facts.code} ${facts.name}${object === undefined ? '' : ` (${object})`}`;
}

interface RemarksParts {
  readonly desk: RecordDesk;
  readonly remarks: readonly Remark[];
  /** A boundary is under review: the room is needed for the film. */
  readonly brief: boolean;
}

/** What the program noticed on its way, in sentences, each with the way to where it can be seen. */
function Remarks({ desk, remarks, brief }: RemarksParts) {
  const [first] = remarks;
  return (
    <details className={brief ? 'remarks brief' : 'remarks'}>
      <summary>
        {countText(remarks.length, 'remark')}
        {brief ? null : <span className="first">: {first?.message}</span>}
      </summary>
      <ul>
        {remarks.map(({ message, where }) => (
          <li key={message}>
            {message}{' '}
            {where?.frame === undefined ? null : (
              <button
                type="button"
                className="quiet"
                onClick={() => desk.proposals.showRemark(where.frame ?? 0)}
              >
                Show
              </button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
