import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { commands } from '@evenhand/cli';
import { timeStudySheet } from '@evenhand/core/define';
import { applyEdit, readEdit } from '@evenhand/core/ground/edit';
import { readStudy } from '@evenhand/core/ground/study';
import { csvColumns, recordAdvice } from '@evenhand/core/record';
import { describe, expect, it } from 'vitest';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const document = (file: string) => readFileSync(path.join(root, file), 'utf8');

describe('docs/file-format.md', () => {
  const text = document('docs/file-format.md');
  const blocks = [...text.matchAll(/```json\n([\s\S]*?)```/g)].map((match) => JSON.parse(match[1] ?? ''));

  it('shows a study that can be opened, and an edit that holds on it', () => {
    const study = readStudy(blocks[0]);
    expect(study.ok ? [] : study.error).toEqual([]);
    const edit = readEdit(blocks.at(-1));
    expect(edit.ok ? [] : edit.error).toEqual([]);
    if (!study.ok || !edit.ok) return;
    const applied = applyEdit(study.value, edit.value);
    expect(applied.ok && applied.value.study.methods[0]?.right.items[1]?.start).toBe(880_000);
    expect(recordAdvice(study.value)).toEqual([]);
  });

  it('shows elements and examinations that fit that study', () => {
    const part = (name: string) => blocks.find((block) => name in block);
    const [method] = blocks[0].methods;
    const whole = { ...blocks[0], methods: [{ ...method, ...part('elements') }], ...part('examinations') };
    const study = readStudy(whole);
    expect(study.ok ? [] : study.error).toEqual([]);
    expect(study.ok && study.value.methods[0]?.elements?.length).toBe(2);
    expect(study.ok && study.value.examinations?.length).toBe(1);
  });

  it('shows time studies and comparisons that fit that study', () => {
    const part = (name: string) => blocks.find((block) => name in block);
    const [method] = blocks[0].methods;
    const methods = [method, { ...method, id: 'improved' }];
    const study = readStudy({ ...blocks[0], methods, ...part('timeStudies'), ...part('comparisons') });
    expect(study.ok ? [] : study.error).toEqual([]);
    if (!study.ok) return;
    const [timeStudy] = study.value.timeStudies ?? [];
    expect(timeStudy && timeStudySheet(study.value, timeStudy).rows[0]?.summary?.n).toBe(1);
    expect(study.value.comparisons?.length).toBe(1);
  });

  it('shows a kept work that fits that study', () => {
    const part = blocks.find((block) => 'works' in block);
    const study = readStudy({ ...blocks[0], ...part });
    expect(study.ok ? [] : study.error).toEqual([]);
    expect(study.ok && study.value.works?.[0]?.work.steps.length).toBe(1);
  });

  it('names the columns of the table as they are', () => {
    expect(text).toContain(`\`${csvColumns.join(',')}\``);
  });
});

describe('docs/guide/command-line.md', () => {
  const text = document('docs/guide/command-line.md');

  it('names every command and every option but the common ones, and no other', () => {
    for (const command of commands) expect(text).toContain(`evenhand ${command.words.join(' ')}`);
    const known = new Set(commands.flatMap((command) => Object.keys(command.options)));
    const named = new Set([...text.matchAll(/--([a-z]+(?:-[a-z]+)*)/g)].map((match) => match[1] ?? ''));
    expect([...named].filter((option) => !known.has(option))).toEqual([]);
    expect([...known].filter((option) => !named.has(option))).toEqual(['output']);
  });
});
