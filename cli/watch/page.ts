/** The page round the book: how the design file stands, what is wrong with it, and the book itself. */
import { watchScript } from '#watch-assets';
import { bookStyle } from '../../lib/public/book.js';

const ownStyle = `
html,body{height:100%}
body{display:flex;flex-direction:column}
.bar{background:var(--leaf);border-bottom:2px solid var(--ink);padding:.5rem 1rem;display:flex;flex-wrap:wrap;gap:.2rem 1rem;align-items:baseline}
.bar h1{font-size:1.05rem}
.bar p{margin:0;color:var(--soft)}
.faulty p{color:var(--warn);font-weight:600}
#problems{margin:0;padding:.4rem 1rem .4rem 2.2rem;max-height:35vh;overflow:auto;background:var(--leaf);border-bottom:1px solid var(--line);max-width:none}
#problems:empty{display:none}
#frames{flex:1;position:relative;min-height:0}
iframe{position:absolute;inset:0;width:100%;height:100%;border:0}
iframe.coming{visibility:hidden}
#empty{padding:1rem}
`;

/**
 * The page, and the policy that lets nothing but its own script and style run.
 * @param nonce fresh for each answer
 */
export function watchPage(nonce: string): { readonly html: string; readonly policy: string } {
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src 'nonce-${nonce}'; connect-src 'self'; frame-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'`;
  const html = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>dishwright watch</title>
<style nonce="${nonce}">${bookStyle}${ownStyle}</style>
</head>
<body>
<header class="bar" id="bar"><h1 id="file">dishwright watch</h1><p id="status" role="status">connecting</p></header>
<section aria-label="Problems"><ul id="problems"></ul></section>
<main id="frames"><p id="empty">The book appears here as soon as the design can be built.</p></main>
<script nonce="${nonce}">${watchScript}</script>
</body>
</html>
`;
  return { html, policy };
}
