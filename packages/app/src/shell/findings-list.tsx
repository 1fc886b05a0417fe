import { type Finding, findingLine } from '@evenhand/core/ground/findings';

/** Findings as a person reads them, errors first. */
export function FindingsList(props: { readonly findings: readonly Finding[] }) {
  const rank = { error: 0, warning: 1, note: 2 } as const;
  const sorted = [...props.findings].sort((a, b) => rank[a.severity] - rank[b.severity]);
  return (
    <ul className="findings">
      {sorted.slice(0, 50).map((item, index) => (
        <li key={`${item.code}-${index}`} className={item.severity}>
          {findingLine(item).replace(/ \[[^\]]*\]$/, '')}
        </li>
      ))}
      {sorted.length > 50 ? <li className="note">… and {sorted.length - 50} more.</li> : null}
    </ul>
  );
}
