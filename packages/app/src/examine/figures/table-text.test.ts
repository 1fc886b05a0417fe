import { describe, expect, it } from 'vitest';
import { tabbedText } from './table-text.ts';

describe('tables on the clipboard', () => {
  it('have a caption, heads and one line for each row, with tabs between', () => {
    const table = {
      caption: 'Time by object',
      columns: [{ head: 'Object' }, { head: 's a cycle', number: true }],
      rows: [
        { key: 'a', cells: ['ring', '−1.25'] },
        { key: 'b', cells: ['hose\tlong\nend', '2.00'] },
      ],
    };
    expect(tabbedText([table])).toBe('Time by object\nObject\ts a cycle\nring\t-1.25\nhose long end\t2.00');
    expect(tabbedText([table, table]).split('\n\n')).toHaveLength(2);
  });

  it('keep a name that looks like a formula a name', () => {
    const rows = ['=1+1', '+x', '@x', '-x', '-2+3', '-2', '+0.5', '-0.1 to 2.0'].map((text) => ({
      key: text,
      cells: [text],
    }));
    expect(tabbedText([{ caption: 'c', columns: [{ head: 'h' }], rows }])).toBe(
      "c\nh\n'=1+1\n'+x\n'@x\n'-x\n'-2+3\n-2\n+0.5\n-0.1 to 2.0",
    );
  });
});
