import { chromium } from 'playwright-core';
import { writeFileSync } from 'node:fs';
import { builtFolder } from './src/build/build';
import { commandPath } from './src/build/command-path';
import { serve } from './src/build/web-server';
const server = await serve({ folder: builtFolder, startPage: 'workbench.html', host: '127.0.0.1', port: 0, orNextFree: true });
const browser = await chromium.launch({ executablePath: commandPath('chromium')!, args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'] });
const page = await (await browser.newContext({ viewport: { width: 1400, height: 900 } })).newPage();
page.setDefaultTimeout(120_000);
const cdp = await page.context().newCDPSession(page);
if (process.argv[2] === 'profile') { await cdp.send('Profiler.enable'); await cdp.send('Profiler.setSamplingInterval', { interval: 1000 }); await cdp.send('Profiler.start'); }
page.on('console', (m) => console.log('C', m.text().slice(0, 900)));
const t = Date.now();
await page.goto(`${server.origin}/workbench.html`);
console.log('load', Date.now() - t);
await page.waitForFunction(() => document.documentElement.dataset['ready'] === 'true');
console.log('ready', Date.now() - t);
await page.locator('.loom-counts li').first().waitFor();
console.log('verdicts', Date.now() - t);
await page.evaluate(() => window.loomWorkbench!.calculated());
console.log('calculated', Date.now() - t);
if (process.argv[2] === 'profile') {
  const { profile } = await cdp.send('Profiler.stop');
  writeFileSync('/tmp/open.cpuprofile', JSON.stringify(profile));
  const self = new Map<string, number>(), total = new Map<string, number>(); const byId = new Map(profile.nodes.map((n) => [n.id, n])); const parent = new Map<number, number>();
  for (const n of profile.nodes) for (const c of n.children ?? []) parent.set(c, n.id);
  const dt = profile.timeDeltas!; profile.samples!.forEach((id, i) => { const ms = dt[i]! / 1000; const name = (n: any) => `${n.callFrame.functionName || '(anon)'} ${n.callFrame.url.split('/').pop()}:${n.callFrame.lineNumber}`; let n: any = byId.get(id); self.set(name(n), (self.get(name(n)) ?? 0) + ms); const seen = new Set(); for (let k: number | undefined = id; k !== undefined; k = parent.get(k)) { const s = name(byId.get(k)); if (!seen.has(s)) { seen.add(s); total.set(s, (total.get(s) ?? 0) + ms); } } });
  const top = (m: Map<string, number>, n: number) => [...m].sort((a, b) => b[1] - a[1]).slice(0, n).map(([k, v]) => `${Math.round(v)} ${k}`).join('\n');
  console.log('SELF\n' + top(self, 30)); console.log('TOTAL\n' + top(total, 70));
}
await browser.close(); await server.close();
