import { type MotionKind, motionFactsOf } from '@evenhand/core/ground/tables';

/** A small field in the motion's colour. An SVG attribute, since the page's policy allows no inline style sheets. */
export function MotionSwatch(props: { readonly kind: MotionKind }) {
  const { colour, kind } = motionFactsOf(props.kind);
  return (
    <svg className="swatch" viewBox="0 0 12 12" aria-hidden="true">
      <rect
        x="0.5"
        y="0.5"
        width="11"
        height="11"
        fill={kind === 'unmarked' ? 'none' : colour}
        stroke="currentColor"
        strokeWidth="1"
        strokeDasharray={kind === 'unmarked' ? '2 2' : undefined}
      />
    </svg>
  );
}
