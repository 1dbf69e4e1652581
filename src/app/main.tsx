// Starts the page.
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { keepOffline } from './offline/version.ts';
import './css/base.css';
import './css/layout.css';
import './css/parts.css';
import './css/picture.css';
import './css/ledger.css';
import './css/compose.css';
import './css/compare.css';
import './css/order.css';
import './css/offline.css';

const root = document.getElementById('page');
if (root) {
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
keepOffline();
