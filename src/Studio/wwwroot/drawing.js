// Measures the room a section drawing has, and turns a pointer on one of its lines into heights.
export function watch(svg, page, editable) {
  const stops = [];
  const on = (target, name, act, how) => { target.addEventListener(name, act, how); stops.push(() => target.removeEventListener(name, act, how)); };
  const tell = (name, ...args) => page.invokeMethodAsync(name, ...args).catch(() => { /* the page has gone */ });

  const size = new ResizeObserver(([entry]) => tell("Fit", Math.floor(entry.contentRect.width)));
  size.observe(svg.parentElement);
  stops.push(() => size.disconnect());

  if (editable) {
    let held = null, latest = null, busy = false;
    const height = (event) => {
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
      return at.y;
    };
    // one question at a time: while the page still draws the last height, only the newest one waits
    const send = async () => {
      if (busy || latest === null) { return; }
      busy = true;
      const { key, y, last } = latest;
      latest = null;
      await tell("DragAsync", key, y, last);
      busy = false;
      if (latest) { requestAnimationFrame(send); }
    };
    on(svg, "pointerdown", (event) => {
      const grip = event.target.closest(".grip");
      if (!grip || event.button !== 0) { return; }
      event.preventDefault();
      grip.focus({ preventScroll: true });
      grip.classList.add("held");
      held = { grip, key: Number(grip.dataset.key), id: event.pointerId, from: event.clientY, moved: false };
      svg.setPointerCapture(event.pointerId);
    });
    on(svg, "pointermove", (event) => {
      if (!held || event.pointerId !== held.id) { return; }
      held.moved ||= Math.abs(event.clientY - held.from) > 2;
      if (held.moved) { latest = { key: held.key, y: height(event), last: false }; send(); }
    });
    const drop = (event) => {
      if (!held || event.pointerId !== held.id) { return; }
      held.grip.classList.remove("held");
      if (held.moved) { latest = { key: held.key, y: height(event), last: true }; send(); }
      held = null;
    };
    on(svg, "pointerup", drop);
    on(svg, "pointercancel", drop);
    on(svg, "keydown", (event) => {
      if (event.target.closest(".grip") && ["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "PageUp", "PageDown"].includes(event.key)) { event.preventDefault(); }
    });
  }

  return { stop: () => stops.forEach((s) => s()) };
}
