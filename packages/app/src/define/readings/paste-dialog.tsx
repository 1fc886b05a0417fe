import { useState } from 'react';
import { Dialog } from '../../shell/dialog.tsx';

/** A place to paste a whole table, for those who would rather see it first. */
export function PasteDialog(props: {
  readonly onClose: () => void;
  readonly onPaste: (text: string, turned: boolean) => void;
}) {
  const [text, setText] = useState('');
  const [turned, setTurned] = useState(false);
  return (
    <Dialog title="Paste a table of readings" onClose={props.onClose} wide>
      <p>
        Names in the first line become elements, and the first column gives the numbers of the cycles where it
        is headed “cycle”. Without names the block goes into the table from the cell in which the cursor
        stands. An empty cell leaves what is there, “-” is a missed reading, and “38.5 (part fell)” is set
        aside with its reason. Ctrl V in the table does the same.
      </p>
      <textarea
        className="paste-text"
        aria-label="Table of readings"
        rows={12}
        value={text}
        spellCheck={false}
        placeholder={'cycle\tTake body\tPut ring on\n1\t0.052\t0.061\n2\t0.049\t0.064'}
        onChange={(event) => setText(event.target.value)}
      />
      <label className="check">
        <input type="checkbox" checked={turned} onChange={(event) => setTurned(event.target.checked)} />
        Without names: cycles run down, elements across
      </label>
      <div className="actions">
        <button
          type="button"
          className="primary"
          disabled={text.trim() === ''}
          onClick={() => props.onPaste(text, turned)}
        >
          Take it into the sheet
        </button>
      </div>
    </Dialog>
  );
}
