/**
 * "Host it": how a club puts the built folder on a static host, how people and administrators add it to Excel, and how a
 * newer version takes its place. What Excel's own menus are called comes from the Office Add-ins documentation (pages
 * "sideload-office-add-ins-for-testing" of December 2025, "sideload-an-office-add-in-on-mac" of February 2025,
 * "create-a-network-shared-folder-catalog", "maintain-breaking-changes" of September 2024, "centralized-deployment").
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { NAMESPACE } from '../../functions/catalogue';
import { projectFolder } from '../build-folders';
import { escaped, pageOf } from './page';

/** An address that belongs to nobody (RFC 2606). */
const ADDRESS = 'https://club.example/cables';

const list = (items: readonly string[], tag: 'ol' | 'ul' = 'ul') =>
  `<${tag}>${items.map((item) => `<li>${item}</li>`).join('\n')}</${tag}>`;
const terminal = (...lines: readonly string[]) =>
  `<pre><code>${escaped(lines.join('\n'))}</code></pre>`;

/** How people add the manifest of a host to their own Excel; the list of steps is shared with "Try it in Excel". */
export const ADDING_IT: readonly (readonly [where: string, steps: readonly string[]])[] = [
  [
    'Excel on the web',
    [
      'Open a workbook. Choose Home, Add-ins, More Settings, then Upload My Add-in.',
      'Give it the file <code>manifest.xml</code> and choose Upload.',
      'The browser remembers it: in another browser, or after its storage was cleared, upload it again.',
    ],
  ],
  [
    'Excel on a Mac',
    [
      'In the Finder press Shift+Command+G and go to <code>~/Library/Containers/com.microsoft.Excel/Data/Documents/wef</code>. If there is no folder <code>wef</code>, make it.',
      'Copy <code>manifest.xml</code> there and start Excel again.',
      'Choose Home, Add-ins, then Loomsheet.',
    ],
  ],
  [
    'Excel on Windows',
    [
      'Put <code>manifest.xml</code> into a folder that is shared in your network (Properties, Sharing), and note its network path.',
      'In Excel choose File, Options, Trust Center, Trust Center Settings, Trusted Add-in Catalogs. Give the network path as the catalog address, choose Add catalog, tick Show in Menu, then OK.',
      'Start Excel again. Choose Home, Add-ins, More Add-ins (or Insert, My Add-ins), Shared Folder, then Loomsheet.',
    ],
  ],
];

/** The manifest's own words on what it asks for. */
function asked(): readonly string[] {
  const manifest = readFileSync(path.join(projectFolder, 'manifest.xml'), 'utf8');
  return [...manifest.matchAll(/<!--\s*([\s\S]*?)\s*-->/g)].map(([, comment]) =>
    comment!.replace(/\s+/g, ' '),
  );
}

/** The page, whole. */
export function hostPage(): string {
  const adding = ADDING_IT.map(([where, steps]) => `<h3>${where}</h3>\n${list(steps, 'ol')}`).join(
    '\n',
  );
  return pageOf(
    'host.html',
    `<p>Loomsheet is a folder of files. Any host that hands out files by https can carry it: there is nothing to run, no account, no database, and nothing is sent back to the host.</p>
<h2>Build it for your address</h2>
<p>Say where the folder will stand; a folder of a site is as good as a site of its own. This writes the folder <code>dist</code>, with a manifest for that address in it.</p>
${terminal('npm install', `LOOM_ORIGIN=${ADDRESS} npm run build`)}
<p>Excel’s pane then takes Office.js from the platform’s delivery address. In a network that does not reach it, keep a copy beside the pane (about 13 MB; the platform supports that for use inside an organisation only):</p>
${terminal(`LOOM_ORIGIN=${ADDRESS} LOOM_OFFICE_JS=own npm run build`)}
<h2>Put it on a host</h2>
${list(
  [
    'Copy the whole of <code>dist</code> to that address. Everything finds its neighbours by their names: keep folders and names as they are.',
    'It has to be https, with a certificate that browsers trust. Excel opens nothing else.',
    `Open <code>${ADDRESS}/workbench.html</code> in a browser. The demonstration has to stand there, calculated.`,
    `Open <code>${ADDRESS}/manifest.xml</code>. The addresses in it have to be yours.`,
  ],
  'ol',
)}
<p>What the host should say, where it lets you choose:</p>
<dl>
<dt>Types</dt><dd><code>.html</code> text/html, <code>.js</code> text/javascript, <code>.css</code> text/css, <code>.json</code> application/json, <code>.webmanifest</code> application/manifest+json, <code>.xml</code> text/xml or application/xml, <code>.png</code> image/png, <code>.svg</code> image/svg+xml. Most hosts know them.</dd>
<dt>Keeping</dt><dd>Files in <code>parts</code> carry their content in their name and may be kept for ever. Of all others a browser should ask each time whether they changed: <code>Cache-Control: no-cache</code>.</dd>
<dt>Framing</dt><dd>Excel on the web shows the pane in a frame. So no <code>X-Frame-Options</code>, and no <code>frame-ancestors</code> that leaves Excel out.</dd>
<dt>Policy</dt><dd>Each page carries its own Content-Security-Policy: no script but its own files, no eval, no other host. A host need not add one.</dd>
</dl>
<h2>The workbench, for anyone</h2>
<p><a href="workbench.html">The workbench</a> is the same functions, sheets and pane in a browser, without Excel. Browsers offer to install it (in the address bar or under Share, “Add to Home Screen”). Once opened by https it also opens without a network, always as one whole version. What is typed there stays in that browser; Save a copy makes a file of it.</p>
<h2 id="own-excel">Add it to your own Excel</h2>
<p>Get <a href="manifest.xml" download="loomsheet-manifest.xml">the manifest of this copy</a>. It says to Excel where Loomsheet is; nothing is installed beyond it. These ways are meant for trying it out, and for a club’s few machines. Wanted are Excel 2021 or later, or Microsoft 365, or Excel on the web; Excel on the iPad runs no functions of add-ins.</p>
${adding}
<p>Then <a href="try.html">try it in Excel</a>, ten minutes with a list.</p>
<h2>Deploy it to an organisation</h2>
${list(
  [
    'In the Microsoft 365 admin center, as an administrator, open Settings, Integrated apps, and choose Upload custom apps.',
    'As app type choose Office Add-in, then upload the manifest or give its address.',
    'Choose who gets it: yourself first, then a small group, then the rest. Groups are easier to keep than names.',
    'It comes by itself the next time that people start Excel, on Windows, Mac and the web. The first time this can take a day.',
  ],
  'ol',
)}
<p>Menus of the admin center change; its own help knows their present names. Add-ins that an administrator deploys need no shared folder and no upload by their users.</p>
<h3>What it asks for</h3>
${list(asked().map(escaped))}
<p>No sign-in, no mailbox, no files of the organisation, no other host than yours and the delivery address of Office.js. Loomsheet counts nothing and reports nothing; what Office itself reports is between you and its maker.</p>
<h2>A newer version</h2>
${list([
  'Build it for the same address and copy it over the old one, <code>parts</code> first and the pages last. Leave the old files in <code>parts</code> for a few days: panes and pages that are open ask for theirs.',
  'Nobody has to do anything. Excel takes the new files when the pane or a workbook with its functions is opened next; new functions can take a day to be known everywhere. The workbench keeps the new version while the old one is open, and opens it at the next reload with no other tab of it open.',
  'Only if the manifest itself changed (its version is higher then), upload it again where you uploaded it before. An administrator is asked to agree again if it asks for more than before.',
  'If it goes wrong, copy the old folder back.',
])}
<h3>Why saved workbooks go on working</h3>
${list([
  `A workbook holds formulas such as <code>=${NAMESPACE}.DCDROP(...)</code>, by names and by the order of arguments. Both are fixed for ever, by a test against a written list: new functions may come, and new arguments at the end that may be left out. Nothing is renamed, moved or taken away.`,
  'The add-in is known to Excel by an identity and the namespace in the manifest. Both stay.',
  'Numbers change only where a figure or a rule was wrong or a new edition of a standard is taken; what changed is said with the version. A cell keeps its old value until it is calculated again.',
  'A copy that was shared as a plain workbook holds its own formulas and tables, and stays as it was written. Take it in again to have it judged by the newer version: workbooks of every earlier version are kept and read by a test.',
])}
<h2>Take it away again</h2>
<p>Remove it where you added it: the uploaded add-in, the file in <code>wef</code> or in the shared folder, or the app in the admin center. Workbooks keep their last values and show #NAME? once calculated. Share copies as plain workbooks first: those need no add-in.</p>`,
  );
}
