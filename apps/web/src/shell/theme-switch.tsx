import { setTheme, useTheme } from './theme.ts';

/** Two words, one at a time: what pressing it brings. */
export function ThemeSwitch() {
  const theme = useTheme();
  return (
    <button type="button" className="button" onClick={() => setTheme(theme === 'dim' ? 'paper' : 'dim')}>
      {theme === 'dim' ? 'Light' : 'Dim'}
    </button>
  );
}
