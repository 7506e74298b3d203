import { mount } from 'svelte';
import App from './App.svelte';
import { Keeping } from './keeping/keeping.svelte';
import './look/fonts.css';
import './look/look.css';
import './look/controls.css';
import './look/tables.css';
import { followUnits } from './look/shown-units';
import { startJob } from './jobs/start-job';
import { Results } from './results/results.svelte';

const worker = new Worker(new URL('./results/core.worker.ts', import.meta.url), { type: 'module' });
const results = new Results(worker);
const keeping = await Keeping.start();
const open = await startJob(keeping);
followUnits(() => open.units);

mount(App, { target: document.getElementById('app')!, props: { open, results, keeping } });
