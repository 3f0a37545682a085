import './look/look.css';
import './look/theme.ts';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { registerServiceWorker } from './offline/service-worker.ts';
import { TextProvider } from './text/text-provider.tsx';
import { UnitsProvider } from './units/units-provider.tsx';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no element "root".');
createRoot(root).render(
  <StrictMode>
    <TextProvider>
      <UnitsProvider>
        <App />
      </UnitsProvider>
    </TextProvider>
  </StrictMode>,
);
registerServiceWorker();
