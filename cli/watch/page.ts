/** The page: the design file as a form, what it comes to, what can be done with it, and the book. */
import { watchScript } from '#watch-assets';
import { bookStyle } from '../../lib/public/book.js';
import { pageStyle } from './page-style.js';

const body = `
<header class="bar" id="bar"><h1 id="file">dishwright watch</h1><p id="status" role="status">connecting</p>
<p id="read-only" hidden>read-only</p>
<div class="acts"><button type="button" id="undo" disabled>Undo</button><button type="button" id="redo" disabled>Redo</button></div></header>
<p id="notice" role="alert"></p><p id="said" class="unseen" aria-live="polite"></p>
<section aria-label="Problems"><ul id="problems"></ul></section>
<section id="start" aria-labelledby="start-head" hidden><h2 id="start-head">A new dish</h2>
<p>The file is not there yet. A few questions, in the order of the job; an empty answer takes the default in brackets.</p>
<dl id="start-given"></dl>
<form id="start-form"><label for="start-answer" id="start-question"></label><p class="fault" id="start-said" role="alert"></p><input type="text" id="start-answer" autocomplete="off" spellcheck="false" aria-describedby="start-said"><button type="submit" id="start-next">Next</button></form>
<div id="start-proposal"></div>
<div class="acts"><button type="button" id="start-write">Write the design</button><button type="button" id="start-again">Start again</button></div></section>
<main>
<div class="desk">
<section id="design" aria-labelledby="design-head"><h2 id="design-head">Design</h2>
<p id="unreadable" hidden>The file cannot be read as keys: fix the line named above in an editor; the page then continues by itself.</p>
<div id="form"></div></section>
<section id="outcome" aria-labelledby="outcome-head"><h2 id="outcome-head">The dish</h2>
<div id="sliders"></div>
<svg id="picture" role="img" aria-label="The dish in section"></svg>
<p class="key">Dashed: the previous dish. A draft is shown while a slider moves; the file is written when it stops.</p>
<div class="acts"><button type="button" id="keep">Keep as a variant</button><label><input type="checkbox" id="every-value"> All values</label></div>
<div class="scroll" tabindex="0" role="region" aria-label="Results of the design"><table id="values"></table></div>
<section aria-labelledby="work-head"><h2 id="work-head">Work</h2>
<p>Files go into folders beside the design file: its name with -cut and -template.</p>
<div class="acts"><button type="button" id="work-cut">Cut everything</button><button type="button" id="work-template">Template</button><button type="button" id="work-verify">Prove the cut files</button><button type="button" id="work-stock">Compare sheets</button><label for="sizes">with</label><input type="text" id="sizes" value="1525x1525" autocomplete="off"><button type="button" id="work-cancel" disabled>Cancel</button></div>
<p><span id="work-status" role="status"></span> <span id="work-seconds"></span></p><progress id="work-progress" aria-label="Work in progress" hidden></progress>
<pre id="work-lines" tabindex="0" role="region" aria-label="What the command says"></pre></section></section>
</div>
<section id="reading" aria-labelledby="book-head"><h2 id="book-head">Book</h2>
<div class="acts"><label for="part">Part</label><select id="part"><option value="">none</option></select><button type="button" id="part-place">Where it sits</button><button type="button" id="part-drawing">Its drawing</button><button type="button" id="part-sheet">Its sheet</button></div>
<div id="frames"><p id="empty">The book appears here as soon as the design can be built.</p></div></section>
</main>`;

/**
 * The page, and the policy that lets nothing but its own script and style run.
 * @param nonce fresh for each answer
 * @param token with which the page asks for changes
 */
export function watchPage(nonce: string, token: string): { readonly html: string; readonly policy: string } {
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src 'nonce-${nonce}'; connect-src 'self'; frame-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'`;
  const html = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>dishwright watch</title>
<style nonce="${nonce}">${bookStyle}${pageStyle}</style>
</head>
<body data-token="${token}">${body}
<script nonce="${nonce}">${watchScript}</script>
</body>
</html>
`;
  return { html, policy };
}
