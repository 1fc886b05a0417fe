import '@fontsource/ibm-plex-sans/latin-400.css';
import '@fontsource/ibm-plex-sans/latin-ext-400.css';
import '@fontsource/ibm-plex-sans/latin-600.css';
import '@fontsource/ibm-plex-sans/latin-ext-600.css';
import './shell/base.css';
import { createRoot } from 'react-dom/client';
import { App } from './shell/app.tsx';

const root = document.getElementById('root');
if (root === null) throw new Error('the page has no place for the app');
createRoot(root).render(<App />);
