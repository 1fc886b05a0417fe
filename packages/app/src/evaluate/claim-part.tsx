import type { Proof } from '@evenhand/core/evaluate';
import { type ReactNode, useState } from 'react';

/** The claim in one sentence that can be copied, and what it rests on; beside it the ways onto paper. */
export function ClaimPart(props: {
  readonly proof: Proof;
  readonly stale: boolean;
  readonly children?: ReactNode;
}) {
  const { claim } = props.proof;
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText([claim.sentence, '', ...claim.restsOn].join('\n'));
      setSaid('Copied, with what it rests on.');
    } catch {
      setSaid('The browser does not let this page copy. Select the sentence and copy it.');
    }
  };
  return (
    <section className={props.stale ? 'claim stale' : 'claim'} aria-label="The claim">
      <p className="sentence">{claim.sentence}</p>
      <div className="claim-foot">
        <button type="button" title="The sentence, with what it rests on" onClick={() => void copy()}>
          Copy
        </button>
        <details>
          <summary>What it rests on</summary>
          <ul>
            {claim.restsOn.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </details>
        <p role="status">{props.stale ? 'Working it out again …' : said}</p>
        <div className="claim-paper">{props.children}</div>
      </div>
    </section>
  );
}
