import { type Finding, findingLine } from '@evenhand/core/ground/findings';

/** Findings as a person reads them, errors first. */
export function FindingsList(props: { readonly findings: readonly Finding[] }) {
  const rank = { error: 0, warning: 1, note: 2 } as const;
  const sorted = [...props.findings].sort((a, b) => rank[a.severity] - rank[b.severity]);
  return (
    <ul className="findings">
      {[...new Map(sorted.map((item) => [lineOf(item), item.severity]))]
        .slice(0, 50)
        .map(([line, severity]) => (
          <li key={line} className={severity}>
            {line}
          </li>
        ))}
      {sorted.length > 50 ? <li className="note">… and {sorted.length - 50} more.</li> : null}
    </ul>
  );
}

/** Place and sentence, without the code; the file only where the sentence does not name it. */
function lineOf(item: Finding): string {
  const { file, ...where } = item.where;
  const named = file !== undefined && item.message.includes(file);
  return findingLine(named ? { ...item, where } : item).replace(/ \[[^\]]*\]$/, '');
}
