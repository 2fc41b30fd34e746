"""What a preview shows above a page while the content is wrong: it pushes the page down and stays in sight while one scrolls."""

from __future__ import annotations

import re
from html import escape

_STYLE = """
.preview-notice { position: sticky; top: 0; z-index: 99; flex: none; box-sizing: border-box; width: auto; max-width: none; max-height: 40vh;
  margin: 0; padding: 12px 20px; overflow: auto; border: 0; border-bottom: 3px solid #b3261e; background: #fff4f2; color: #410e0b;
  font: 16px/1.4 system-ui, sans-serif }
.preview-notice form { display: flex; flex-wrap: wrap; gap: 8px 20px; align-items: center; justify-content: space-between }
.preview-notice pre { margin: 8px 0 0; white-space: pre-wrap; overflow-wrap: anywhere; font: 14px/1.4 ui-monospace, monospace }
.preview-notice button { padding: 4px 12px; border: 1px solid #410e0b; border-radius: 4px; background: #ffffff; color: #410e0b; font: inherit; cursor: pointer }
html { scroll-padding-top: var(--preview-notice, 0); overflow-anchor: none }
.md-header { top: var(--preview-notice, 0) }
.md-sidebar { top: calc(2.4rem + var(--preview-notice, 0px)) !important }
@media print { .preview-notice { display: none } }
"""
_SCRIPT = """
{
  const notice = document.querySelector(".preview-notice");
  const below = () => document.documentElement.style.setProperty("--preview-notice", `${notice.getBoundingClientRect().height}px`);
  new ResizeObserver(below).observe(notice);
  below();
}
"""
"""What sticks to the top of the window otherwise sticks below the notice, which is as high as its text."""
_NOTICE = """
<style>%s</style>
<dialog open class="preview-notice" aria-label="What is wrong">
<form method="dialog"><strong>%s</strong> <button>Hide until the next save</button></form>
<pre tabindex="0">%s</pre>
</dialog>
<script>%s</script>
"""


def notice(head: str, text: str) -> str:
    """The notice as HTML."""
    return _NOTICE % (_STYLE, escape(head), escape(text), _SCRIPT)


def noticed(page: bytes, html: str) -> bytes:
    """A page with a notice as the first thing of its body; what has no body is left as it is."""
    return re.sub(rb"<body\b[^>]*>", lambda found: found[0] + html.encode(), page, count=1)
