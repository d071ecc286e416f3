// The few things a page cannot do from the server.
window.studio = {
  look: () => (document.cookie.match(/(?:^|; )look=(dark|light)/) || [])[1] || "",
  chooseLook: (look) => {
    document.cookie = `look=${look}; path=/; max-age=31536000; samesite=lax`;
    document.documentElement.dataset.look = look;
  },
  // drafts survive a lost connection and a closed tab; they stay on this device
  keepDraft: (key, json) => { try { localStorage.setItem("draft:" + key, json); } catch { /* a full or closed store only costs the draft */ } },
  draft: (key) => { try { return localStorage.getItem("draft:" + key); } catch { return null; } },
  dropDraft: (key) => { try { localStorage.removeItem("draft:" + key); } catch { /* nothing to drop */ } },
  // what was just added has the focus until hands go on by themselves: the list that it was chosen from still closes, and would take it away
  focusAdded: (selector) => {
    const go = () => { const e = document.querySelector(selector); if (e && document.activeElement !== e) { e.focus(); } };
    const lost = () => queueMicrotask(go);
    const used = () => ["focusin", "focusout"].forEach((n) => document.removeEventListener(n, lost, true));
    window.studio.letFocus?.();
    window.studio.letFocus = used;
    go();
    ["focusin", "focusout"].forEach((n) => document.addEventListener(n, lost, true));
    ["keydown", "pointerdown"].forEach((n) => document.addEventListener(n, used, { capture: true, once: true }));
  },
  focus: (selector) => { const e = document.querySelector(selector); if (e) { e.focus(); } },
};

// Enter in a list of readings goes on to the next one and never sends the form
document.addEventListener("keydown", (e) => {
  if (e.key === "Enter" && e.target.matches("[data-enter='next'] input")) { e.preventDefault(); }
});

// On the first start the browser knows better than the server where the studio is.
document.addEventListener("DOMContentLoaded", () => {
  const zone = document.querySelector("select#zone");
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (zone && [...zone.options].some((o) => o.value === here)) { zone.value = here; }
});
