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
  // what was just added: once now, and once more after the list that it was chosen from has closed, unless hands went on meanwhile
  focusAdded: (selector) => {
    let used = false;
    const use = () => { used = true; };
    const go = () => { const e = document.querySelector(selector); if (!used && e && document.activeElement !== e) { e.focus(); } };
    go();
    document.addEventListener('keydown', use, { capture: true, once: true });
    document.addEventListener('pointerdown', use, { capture: true, once: true });
    setTimeout(() => { go(); document.removeEventListener('keydown', use, true); document.removeEventListener('pointerdown', use, true); }, 80);
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
