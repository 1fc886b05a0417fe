import { figuresOf, type MethodReading, type Trace, variationOf } from '@evenhand/core/examine';
import type { Edit } from '@evenhand/core/ground/edit';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { useRef, useState } from 'react';
import { usePreferences } from '../../shell/preferences.ts';
import { CyclesSection } from './cycles-section.tsx';
import { ElementsSection } from './elements-section.tsx';
import { HandsSection } from './hands-section.tsx';
import type { SectionProps } from './section.ts';
import { SequencesSection } from './sequences-section.tsx';
import { TimeSection } from './time-section.tsx';
import { useComputed } from './use-computed.ts';
import { VariationSection } from './variation-section.tsx';
import './figures.css';

interface Props {
  readonly reading: MethodReading;
  readonly unit: TimeUnit;
  readonly look: 'light' | 'dark';
  readonly onTrace: (traces: readonly Trace[]) => void;
  readonly onEdit: (edit: Edit) => void;
  readonly newId: () => string;
  /** The critical examination of a named element. */
  readonly examination?: (element: string) => React.ReactNode;
}

const parts = [
  ['cycles', 'Cycles'],
  ['time', 'Time'],
  ['hands', 'Both hands'],
  ['sequences', 'Sequences'],
  ['variation', 'Variation'],
  ['elements', 'Elements'],
] as const;
type Part = (typeof parts)[number][0];

/** All figures of a method as quiet plots and as tables; whatever is chosen leads to the frames behind it. */
export function FiguresPanel(props: Props) {
  const { reading, unit, onTrace } = props;
  const { grouping } = usePreferences();
  const [open, setOpen] = useState(false);
  const host = useRef<HTMLDivElement>(null);
  const figures = useComputed(reading, () => figuresOf(reading, grouping), [reading, grouping]);
  const variation = useComputed(reading, () => variationOf(reading), [reading]);
  if (figures === undefined || variation === undefined) {
    return (
      <p className="examine-empty" role="status">
        Working out the figures …
      </p>
    );
  }
  const given: SectionProps = { reading, figures, unit, open, onTrace };
  const shown: Readonly<Record<Part, React.ReactNode>> = {
    cycles: <CyclesSection {...given} variation={variation} />,
    time: <TimeSection {...given} />,
    hands: <HandsSection {...given} />,
    sequences: <SequencesSection {...given} />,
    variation: <VariationSection {...given} variation={variation} />,
    elements: (
      <ElementsSection
        reading={reading}
        unit={unit}
        onTrace={onTrace}
        onEdit={props.onEdit}
        newId={props.newId}
        {...(props.examination === undefined ? {} : { examination: props.examination })}
      />
    ),
  };
  return (
    <div className="figures" data-look={props.look} ref={host}>
      <PartsBar
        open={open}
        onOpen={setOpen}
        onGo={(part) => {
          const goal = host.current?.querySelector<HTMLElement>(`[data-part="${part}"]`);
          goal?.scrollIntoView({ block: 'start' });
          goal?.focus({ preventScroll: true });
        }}
      />
      {reading.notes.map((note) => (
        <p key={note.code} className="note">
          {note.message}
        </p>
      ))}
      {parts.map(([part, title]) => (
        <section key={part} className="figure-part" aria-label={title} data-part={part} tabIndex={-1}>
          <h2>{title}</h2>
          {shown[part]}
        </section>
      ))}
    </div>
  );
}

function PartsBar(props: {
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly onGo: (part: Part) => void;
}) {
  return (
    <nav className="figure-parts" aria-label="Parts of the figures">
      {parts.map(([part, title]) => (
        <button key={part} type="button" className="quiet" onClick={() => props.onGo(part)}>
          {title}
        </button>
      ))}
      <label className="inline-choice">
        <input
          type="checkbox"
          checked={props.open}
          onChange={(event) => props.onOpen(event.target.checked)}
        />
        <span>Tables open</span>
      </label>
    </nav>
  );
}
