import { type Finding, finding } from '@evenhand/core/ground/findings';
import { emptyStudy, parseStudy, type Study } from '@evenhand/core/ground/study';
import { countText } from '@evenhand/core/ground/units';
import { csvToStudy } from '@evenhand/core/record';
import { useCallback, useEffect, useState } from 'react';
import { api, randomId } from '../editor/page-ports.ts';
import { failureFindings, type StudyEntry } from '../editor/server-api.ts';
import { FindingsList } from './findings-list.tsx';
import { Link } from './link.tsx';
import { LookChoice } from './look-choice.tsx';
import { usePageTitle } from './page-title.ts';
import { goTo } from './route.ts';

/** The first page: the studies of this machine, and the ways to begin one. */
export function StudiesPage() {
  usePageTitle(undefined);
  const [entries, setEntries] = useState<readonly StudyEntry[]>();
  const [findings, setFindings] = useState<readonly Finding[]>([]);
  const [showArchived, setShowArchived] = useState(false);
  const reload = useCallback(async () => {
    const answer = await api.studies();
    if (answer.ok) setEntries(answer.value);
    else setFindings(failureFindings(answer.error));
  }, []);
  useEffect(() => void reload(), [reload]);

  const begin = async (study: Study) => {
    const answer = await api.create(study);
    if (answer.ok) goTo({ page: 'study', study: answer.value.id, desk: 'record' });
    else setFindings(failureFindings(answer.error));
  };
  const archive = async (entry: StudyEntry) => {
    const answer = await api.archive(entry.id, !entry.archived);
    if (!answer.ok) setFindings(failureFindings(answer.error));
    await reload();
  };
  const open = async (file: File) => {
    const read = readFile(file.name, await file.text());
    setFindings(read.findings);
    if (read.study !== undefined) await begin(read.study);
  };

  const shown = entries?.filter((entry) => showArchived || !entry.archived) ?? [];
  const archived = entries?.filter((entry) => entry.archived).length ?? 0;
  return (
    <div className="studies-page">
      <header className="masthead">
        <h1>Evenhand</h1>
        <p>From a film of two hands to a better method that is proven.</p>
        <LookChoice />
      </header>
      <main>
        {findings.length > 0 ? (
          <div role="alert">
            <FindingsList findings={findings} />
          </div>
        ) : null}
        <section aria-labelledby="studies-heading">
          <h2 id="studies-heading">Studies</h2>
          {entries === undefined ? (
            <p className="soft">Reading the studies …</p>
          ) : shown.length === 0 ? (
            <p className="soft">There is no study yet. Begin one below.</p>
          ) : (
            <StudyTable entries={shown} onArchive={(entry) => void archive(entry)} />
          )}
          {archived > 0 ? (
            <label className="check">
              <input
                type="checkbox"
                checked={showArchived}
                onChange={(event) => setShowArchived(event.target.checked)}
              />
              Show {countText(archived, 'study', 'studies')} put away
            </label>
          ) : null}
        </section>
        <section aria-labelledby="begin-heading" className="begin">
          <h2 id="begin-heading">Begin</h2>
          <NewStudy onBegin={(title) => void begin(emptyStudy(randomId(), title))} />
          <label className="file-choice">
            <span>Open a study (.evenhand.json) or a table of motions (.csv)</span>
            <input
              type="file"
              accept=".json,.csv,application/json,text/csv"
              onChange={(event) => {
                const file = event.target.files?.[0];
                if (file !== undefined) void open(file);
                event.target.value = '';
              }}
            />
          </label>
        </section>
        <footer className="care">
          <p>
            Films show people at work. They stay on this machine; nothing is sent anywhere. Tell the person
            you film what it is for, and film only with their agreement. Evenhand studies methods, not people.
          </p>
        </footer>
      </main>
    </div>
  );
}

function StudyTable(props: {
  readonly entries: readonly StudyEntry[];
  readonly onArchive: (entry: StudyEntry) => void;
}) {
  return (
    <table className="plain">
      <thead>
        <tr>
          <th scope="col">Study</th>
          <th scope="col">Films</th>
          <th scope="col">Methods</th>
          <th scope="col">Last change</th>
          <th scope="col">
            <span className="hidden">Actions</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {props.entries.map((entry) => (
          <tr key={entry.id}>
            <th scope="row">
              <Link to={{ page: 'study', study: entry.id, desk: 'record' }}>{entry.title}</Link>
              {entry.demo ? <span className="tag">invented demonstration</span> : null}
              {entry.archived ? <span className="tag">put away</span> : null}
            </th>
            <td>{entry.films}</td>
            <td>{entry.methods}</td>
            <td>{whenText(entry.changedAt)}</td>
            <td className="actions">
              <Link to={{ page: 'study', study: entry.id, desk: 'chart' }}>Chart</Link>
              <button type="button" className="quiet" onClick={() => props.onArchive(entry)}>
                {entry.archived ? 'Take out again' : 'Put away'}
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function NewStudy(props: { readonly onBegin: (title: string) => void }) {
  const [title, setTitle] = useState('');
  return (
    <form
      className="new-study"
      onSubmit={(event) => {
        event.preventDefault();
        if (title.trim() !== '') props.onBegin(title.trim());
      }}
    >
      <label>
        <span>The operation to study</span>
        <input
          value={title}
          maxLength={200}
          required
          placeholder="such as: couple hose to body"
          onChange={(event) => setTitle(event.target.value)}
        />
      </label>
      <button type="submit" className="primary">
        New study
      </button>
    </form>
  );
}

/** A date as 2026-03-14 09:41 in the person's own time zone. */
function whenText(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return iso;
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())} ${two(date.getHours())}:${two(date.getMinutes())}`;
}

function readFile(
  name: string,
  text: string,
): { readonly study?: Study; readonly findings: readonly Finding[] } {
  const withFile = (findings: readonly Finding[]) =>
    findings.map((item) => ({ ...item, where: { file: name, ...item.where } }));
  if (/\.csv$/i.test(name)) {
    const read = csvToStudy(text, { title: name.replace(/\.csv$/i, ''), newId: randomId });
    return read.ok
      ? { study: read.value.study, findings: withFile(read.value.notes) }
      : { findings: withFile(read.error) };
  }
  if (!/\.json$/i.test(name)) {
    return { findings: [finding('study/no-format', { file: name })] };
  }
  const read = parseStudy(text);
  return read.ok ? { study: read.value, findings: [] } : { findings: withFile(read.error) };
}
