import { preferences, usePreferences } from './preferences.ts';

export function LookChoice() {
  const { look } = usePreferences();
  return (
    <label className="inline-choice">
      <span>Look</span>
      <select
        value={look}
        onChange={(event) => preferences.change({ look: event.target.value as 'system' | 'light' | 'dark' })}
      >
        <option value="system">as the system</option>
        <option value="light">light</option>
        <option value="dark">dark</option>
      </select>
    </label>
  );
}
