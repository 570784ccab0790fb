/** How a figure looks: in the inks of its drawings, on its own page and in the element's shadow alike. */
import { inkRoles } from '../draw/ink-roles.ts';
import { themes } from '../draw/theme.ts';

const light = inkRoles(themes.light);

/** An ink that a page may set; the light theme's unless it does. */
const ink = (role: string): string => `var(--solderleaf-${role}, ${light.get(role)})`;

const rule = `1px solid ${ink('inside')}`;
const focus = `outline: 3px solid ${ink('accent')}; outline-offset: 2px;`;

/** Width of the figure from which it has the wide drawing, CSS pixels. */
const WIDE = 640;
/** From which a card stands beside the drawing, and from which tables stand beside each other. */
const BESIDE = 1000;
const TABLES = 1200;
/** Width of a window that a figure goes across, so that a drawing made for a phone has all of its width. */
const PHONE = 480;
/** Room for the key, which is made for a column of 360 px. */
const KEY = '360px';

/** Rules of a figure that answers, and the same of one that a script is on its way to; `X` stands for the figure. */
const answering = (rules: string): string =>
  `${rules.replaceAll('X ', '.slf[data-ready] ')}
@media (scripting: enabled) {
${rules.replaceAll('X ', '.slf:not([data-ready]) ')}
}`;

/**
 * Rules of the figure's parts. Where scripts run, a figure that none has reached yet already has the shape that it will have then, so that
 * nothing on the page moves: its controls keep their room, and its cards stand in a row that scrolls.
 */
export const figureStyles = `/* Figures of Solderleaf kits. */
.solderleaf-figure { display: block; }
.solderleaf-figure[hidden] { display: none; }
.slf, .slf * , .slf ::before { box-sizing: border-box; }
.slf { all: initial; display: block; box-sizing: border-box; container-type: inline-size; padding: 1.25rem; border: ${rule}; border-radius: 14px; background: ${ink('paper')}; color: ${ink('ink')}; font: 1rem/1.45 var(--solderleaf-font, Inter, system-ui, "Helvetica Neue", Arial, sans-serif); text-align: start; scrollbar-color: ${ink('outline')} transparent; }
.slf p, .slf ul, .slf dl, .slf dd { margin: 0; padding: 0; }
.slf b { font-weight: 650; }
.slf svg { display: block; max-width: 100%; height: auto; }
.slf-quiet { color: ${ink('quiet')}; font-size: 0.875rem; }
.slf-head { display: flex; flex-wrap: wrap; gap: 0 1rem; align-items: baseline; justify-content: space-between; margin: 0 0 1rem; padding: 0; }
.slf-title { font-size: 1.25rem; font-weight: 700; line-height: 1.25; }

.slf-bar[hidden], .slf-name[hidden], .slf-status[hidden] { display: none; }
.slf-bar, .slf-switches { display: flex; flex-wrap: wrap; gap: 0.75rem 1.5rem; align-items: end; }
.slf-now { display: none; }
.slf-switch > .slf-quiet { display: block; margin-bottom: 0.25rem; }
.slf-options, .slf-tools { display: flex; flex-wrap: wrap; gap: 0.375rem; }
.slf-tools { margin-inline-start: auto; }
.slf-options label { position: relative; display: block; }
.slf-options input { position: absolute; inset: 0; width: 100%; height: 100%; margin: 0; opacity: 0; cursor: pointer; }
.slf-options span, .slf button { all: unset; box-sizing: border-box; display: flex; align-items: center; justify-content: center; min-width: 2.75rem; min-height: 2.75rem; padding: 0.25rem 0.75rem; border: 1px solid ${ink('outline')}; border-radius: 10px; background: ${ink('paper')}; color: ${ink('ink')}; font-size: 0.9375rem; line-height: 1.2; text-align: center; cursor: pointer; }
.slf-options span { font-weight: 650; }
.slf button.slf-sign { font-size: 1.25rem; }
.slf-options label:hover span, .slf button:hover { background: ${ink('plate')}; }
.slf-options input:checked + span { background: ${ink('ink')}; border-color: ${ink('ink')}; color: ${ink('paper')}; }
.slf button[aria-pressed="true"] { background: ${ink('accent-fill')}; border-color: ${ink('accent')}; color: ${ink('accent')}; }
.slf button[aria-disabled="true"] { color: ${ink('quiet')}; border-style: dashed; cursor: default; }
.slf-options input:focus-visible + span, .slf button:focus-visible, .slf-view:focus-visible, .slf-scroll:focus-visible, .slf-cards:focus-visible { ${focus} }

.slf-main { display: flex; flex-direction: column; gap: 0.875rem; }
.slf-stage, .slf-loads, .slf-key { min-width: 0; }
.slf-stage { border: ${rule}; border-radius: 10px; overflow: clip; }
.slf-view { overflow: auto; }
.slf-view:focus-visible { outline-offset: -3px; }
.slf-view svg { margin-inline: auto; touch-action: pan-x pan-y; }
.slf-view[data-zoomed] svg { touch-action: none; cursor: grab; }
.slf-wide { display: none; }
.slf-wide svg { width: 100%; max-width: 75rem; }
.slf-narrow svg { max-width: none; }
.slf-name { position: sticky; bottom: 0; min-height: 3.5rem; padding: 0.5rem 0.75rem !important; border-top: ${rule}; background: ${ink('plate')}; color: ${ink('ink')}; }

.slf-cards { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 17rem), 1fr)); gap: 0.75rem; }
.slf-card { padding: 0.875rem 1rem; border: ${rule}; border-radius: 10px; background: ${ink('plate')}; }
.slf-sounds { font-size: 1.125rem; font-weight: 700; }
.slf-pickup { display: grid; grid-template-columns: 1fr 1fr; gap: 0 0.75rem; margin-top: 0.625rem; padding-top: 0.625rem; border-top: ${rule}; font-size: 0.875rem; font-variant-numeric: tabular-nums; }
.slf-pickup dt, .slf-pickup .slf-quiet { grid-column: 1 / -1; }
.slf-pickup b, .slf-pickup span { display: block; }
.slf-pickup b { font-size: 1.125rem; }
.slf-pickup span { color: ${ink('quiet')}; font-size: 0.8125rem; }
.slf-pickup dt { font-weight: 650; }
.slf-load { width: 100%; height: 12px !important; margin: 0.25rem 0; }
.slf-legend { margin: 0 0.75rem !important; }
.slf-note { margin-top: 0.625rem !important; }
.slf-status { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }

.slf-key { overflow-x: auto; }
.slf-text { display: grid; grid-template-columns: minmax(0, 1fr); gap: 1.5rem; margin-top: 1.5rem; }
.slf-text > div { display: grid; gap: 1.5rem; align-content: start; min-width: 0; }
.slf-scroll { position: relative; overflow-x: auto; border-radius: 4px; }
.slf table { border-collapse: collapse; width: 100%; min-width: 34rem; font-size: 0.875rem; }
.slf caption, .slf-heading { padding: 0 0 0.5rem; font-size: 1rem; font-weight: 700; text-align: start; }
.slf th, .slf td { padding: 0.375rem 0.75rem 0.375rem 0; border-bottom: ${rule}; text-align: start; vertical-align: top; font-weight: 400; }
.slf thead th { color: ${ink('quiet')}; border-bottom-color: ${ink('outline')}; }
.slf tbody th { font-weight: 650; }
.slf tr.slf-named > * { background: ${ink('accent-fill')}; }
.slf-cautions { padding: 1rem; border: 2px solid ${ink('ink')}; border-radius: 10px; font-size: 0.875rem; }
.slf-cautions .slf-heading { padding-bottom: 0.5rem !important; }
.slf-cautions ul { padding-inline-start: 1.25rem !important; }
.slf-cautions li + li { margin-top: 0.375rem; }

.slf [data-joint], .slf [data-lug] { cursor: pointer; }
.slf [data-joint]:focus, .slf [data-lug]:focus { outline: none; }
.slf svg text { pointer-events: none; }
.slf .sl-halo { pointer-events: stroke; stroke-linecap: round; }

@media (scripting: enabled) {
  .slf:not([data-ready]) .slf-bar { display: flex; visibility: hidden; }
  .slf:not([data-ready]) .slf-name { display: block; visibility: hidden; }
  .slf:not([data-ready]) .slf-cards { grid-template-columns: none; grid-auto-flow: column; grid-auto-columns: 100%; overflow-x: auto; scrollbar-width: none; scroll-snap-type: x mandatory; }
  .slf:not([data-ready]) .slf-card { scroll-snap-align: start; }
  .slf:not([data-ready]) .slf-name::before { content: attr(data-hint); }
  @media (any-hover: none) { .slf:not([data-ready]) .slf-name::before { content: attr(data-touch-hint); } }
}
.slf[data-ready] .slf-cards { grid-template-columns: minmax(0, 1fr); }
.slf[data-ready] .slf-card { grid-area: 1 / 1; }
.slf[data-ready] :is(.slf-card, .slf-now > p)[data-off] { visibility: hidden; }

@container (min-width: ${WIDE}px) {
  .slf-wide { display: block; }
  .slf-narrow { display: none; }
  .slf-name { min-height: 2.5rem; }
}
@media screen {
${answering(`@container (max-width: ${BESIDE - 0.02}px) {
  X .slf-card { padding: 0.625rem 0.75rem; }
  X .slf-where { display: none; }
  X .slf-card dl { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 8.75rem), 1fr)); gap: 0 1rem; }
  X .slf-pickup { display: block; margin-top: 0.375rem; padding-top: 0.375rem; }
  X .slf-pickup :is(b, span) { display: inline; font-size: 0.8125rem; }
  X .slf-pickup b { font-size: 1rem; }
  X .slf-note { display: inline; }
  X .slf-note + .slf-note::before { content: " · "; }
}
@container (max-width: ${WIDE - 0.02}px) {
  X .slf-bar { display: contents; }
  X .slf-switches { order: -3; }
  X .slf-loads { order: -2; }
  X .slf-tools { order: -1; }
}
@container (min-width: ${BESIDE}px) {
  X .slf-main { display: grid; grid-template: "bar bar" auto "stage loads" auto "stage key" 1fr / minmax(0, 1fr) ${KEY}; align-items: start; }
  X .slf-bar { grid-area: bar; }
  X .slf-stage { grid-area: stage; }
  X .slf-loads { grid-area: loads; }
  X .slf-key { grid-area: key; }
}`)}
}
@media screen and (min-height: 500px) {
  @container (max-width: ${WIDE - 0.02}px) {
    .slf[data-ready] .slf-held { position: sticky; top: var(--solderleaf-top, 0px); z-index: 1; padding-block: 0.5rem; background: ${ink('paper')}; }
    .slf[data-past] .slf-now { position: absolute; inset: 100% 0 auto; display: grid; padding: 0 0.75rem 0.5rem; border-bottom: ${rule}; background: ${ink('paper')}; color: ${ink('ink')}; }
    .slf[data-ready] .slf-bar:has(.slf-held) ~ * [tabindex] { scroll-margin-block: 9rem 5rem; }
    .slf-now > p { grid-area: 1 / 1; display: flex; flex-wrap: wrap; gap: 0 1rem; }
  }
}
@container (min-width: ${TABLES}px) {
  .slf-text { grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 2rem; }
}
@media screen and (max-width: ${PHONE}px) {
  .slf { padding: 1rem 0; border-width: 1px 0; border-radius: 0; }
  .slf > :not(.slf-main, .slf-status), .slf-loads, .slf-tools { margin-inline: 0.75rem !important; }
  .slf-switches { gap: 0.5rem 1rem; padding-inline: 0.75rem; }
  .slf-stage { border-inline: 0; border-radius: 0; }
  .slf-tools { gap: 0.25rem; }
  .slf .slf-tools button { padding: 0.25rem 0.5rem; font-size: 0.875rem; }
}
@media (prefers-reduced-motion: no-preference) {
  .slf [data-joint], .slf [data-part], .slf [data-chip] { transition: opacity 0.15s; }
}
@media (forced-colors: active) {
  .slf-load rect { vector-effect: non-scaling-stroke; }
  .slf-load .sl-fill-inside { fill: Canvas; stroke: CanvasText; }
  .slf-load [class*='sl-fill-line'] { fill: Highlight; }
  .slf-options input:checked + span, .slf button[aria-pressed="true"] { forced-color-adjust: none; background: CanvasText; border-color: CanvasText; color: Canvas; }
  .slf-options input:focus-visible + span, .slf button:focus-visible, .slf-view:focus-visible, .slf-scroll:focus-visible { outline-color: Highlight; }
}
@media print {
  .slf { padding: 0; border: 0; }
  .slf .slf-bar, .slf .slf-name { display: none !important; }
  .slf .slf-cards { display: grid !important; grid-auto-flow: row !important; grid-template-columns: repeat(auto-fill, minmax(14rem, 1fr)) !important; overflow: visible !important; }
  .slf .slf-card { grid-area: auto !important; visibility: visible !important; break-inside: avoid; }
  .slf-view, .slf-scroll, .slf-key { overflow: visible; }
  .slf-text { grid-template-columns: minmax(0, 1fr); }
  .slf tr, .slf-cautions, .slf-stage { break-inside: avoid; }
  .solderleaf-printing :not(.solderleaf-printed, :has(.solderleaf-printed)) { display: none !important; }
}
`;
