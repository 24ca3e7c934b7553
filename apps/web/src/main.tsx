import '@fontsource/literata/latin-400.css';
import '@fontsource/literata/latin-600.css';
import '@fontsource/source-sans-3/latin-400.css';
import '@fontsource/source-sans-3/latin-500.css';
import '@fontsource/source-sans-3/latin-600.css';
import '@fontsource/source-sans-3/latin-700.css';
import './look/tokens.css';
import './look/base.css';
import './look/controls.css';
import './shell/shell.css';
import './admission/admission.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import './people/people.css';
import { showTheme } from './shell/theme.ts';
import { startSync } from './sync/records.ts';
import { mayWork, startSession } from './sync/session.ts';

showTheme();
void startSession().then(() => {
  if (mayWork()) void startSync();
});
const root = document.getElementById('root');
if (!root) throw new Error('the page has no root');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
