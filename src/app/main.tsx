// Starts the page.
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { restoreWording } from './languages/wording.ts';
import { keepOffline } from './offline/version.ts';
import { startSync } from './sync/useSync.ts';
import { followBook } from './versions/files.ts';
import './css/base.css';
import './css/layout.css';
import './css/parts.css';
import './css/picture.css';
import './css/ledger.css';
import './css/finder.css';
import './css/compose.css';
import './css/compare.css';
import './css/order.css';
import './css/guide.css';
import './css/logbook.css';
import './css/versions.css';
import './css/offline.css';

restoreWording();
followBook();
const root = document.getElementById('page');
if (root) {
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
keepOffline();
startSync();
