// Paints a piece's temperatures from what the server worked out, one moment at a time; nothing is computed here but colours and lines.
// Dark to light in even steps of lightness, so that it reads in grey and to every eye.
const stops = [[0, 24, 32, 66], [0.25, 84, 40, 110], [0.5, 166, 56, 92], [0.72, 224, 110, 58], [0.88, 246, 178, 84], [1, 252, 240, 196]];
const colour = t => {
  const s = Math.min(1, Math.max(0, t));
  const i = Math.max(1, stops.findIndex(p => p[0] >= s));
  const [a, b] = [stops[i - 1], stops[i]];
  const f = (s - a[0]) / (b[0] - a[0]);
  return `rgb(${[1, 2, 3].map(k => Math.round(a[k] + f * (b[k] - a[k]))).join(",")})`;
};

export function begin(box) {
  const canvas = box.querySelector("canvas"), slider = box.querySelector("[data-act=when]"), play = box.querySelector("[data-act=play]"), out = box.querySelector("output");
  const pen = canvas.getContext("2d");
  const still = matchMedia("(prefers-reduced-motion: reduce)");
  let data = null, timer = 0, scale = 1, midX = 0, foot = 0, low = 0, high = 1;

  const place = (x, z) => [midX + x * scale, foot - z * scale];
  const at = (frame, n) => data.tenths[frame][n];

  // each cell cut into a few strips: its four corners' warmth laid evenly across
  const cell = (frame, i, k, side) => {
    const n = [k * data.across + i, k * data.across + i + 1, (k + 1) * data.across + i + 1, (k + 1) * data.across + i];
    const t = n.map(m => at(frame, m));
    if (t.some(v => v < -5000)) { return; }
    const mean = (t[0] + t[1] + t[2] + t[3]) / 40;
    pen.fillStyle = pen.strokeStyle = colour((mean - low) / (high - low));
    pen.beginPath();
    n.forEach((m, c) => { const [x, y] = place(side * data.x[m], data.z[m]); c ? pen.lineTo(x, y) : pen.moveTo(x, y); });
    pen.closePath(); pen.fill(); pen.stroke();
  };

  // where a line of equal warmth crosses a cell's edges
  const level = (frame, celsius) => {
    const want = celsius * 10;
    let label = null;
    pen.beginPath();
    for (let k = 0; k < data.up - 1; k++) {
      for (let i = 0; i < data.across - 1; i++) {
        const n = [k * data.across + i, k * data.across + i + 1, (k + 1) * data.across + i + 1, (k + 1) * data.across + i];
        const t = n.map(m => at(frame, m));
        if (t.some(v => v < -5000)) { continue; }
        const cross = [];
        for (let e = 0; e < 4; e++) {
          const [a, b] = [t[e], t[(e + 1) % 4]];
          if ((a < want) !== (b < want)) {
            const f = (want - a) / (b - a), p = n[e], q = n[(e + 1) % 4];
            cross.push([data.x[p] + f * (data.x[q] - data.x[p]), data.z[p] + f * (data.z[q] - data.z[p])]);
          }
        }
        for (let c = 0; c + 1 < cross.length; c += 2) {
          for (const side of [1, -1]) {
            const [x1, y1] = place(side * cross[c][0], cross[c][1]), [x2, y2] = place(side * cross[c + 1][0], cross[c + 1][1]);
            pen.moveTo(x1, y1); pen.lineTo(x2, y2);
          }
          if (!label || cross[c][1] > label[1]) { label = cross[c]; }
        }
      }
    }
    pen.stroke();
    return label;
  };

  const edges = () => {
    pen.strokeStyle = getComputedStyle(box).color; pen.lineWidth = 1.6;
    pen.beginPath();
    for (let k = 0; k < data.up - 1; k++) {
      for (let i = 0; i < data.across - 1; i++) {
        const here = data.cells[k * (data.across - 1) + i];
        const right = i + 2 < data.across ? data.cells[k * (data.across - 1) + i + 1] : here;
        const above = k + 2 < data.up ? data.cells[(k + 1) * (data.across - 1) + i] : here;
        for (const side of [1, -1]) {
          const go = (p, q) => { const [x1, y1] = place(side * data.x[p], data.z[p]), [x2, y2] = place(side * data.x[q], data.z[q]); pen.moveTo(x1, y1); pen.lineTo(x2, y2); };
          if (right !== here) { go(k * data.across + i + 1, (k + 1) * data.across + i + 1); }
          if (above !== here) { go((k + 1) * data.across + i, (k + 1) * data.across + i + 1); }
        }
      }
    }
    pen.stroke();
  };

  const paint = () => {
    if (!data) { return; }
    const frame = Number(slider.value);
    pen.clearRect(0, 0, canvas.width, canvas.height);
    pen.lineWidth = 0.7;
    for (let k = 0; k < data.up - 1; k++) {
      for (let i = 0; i < data.across - 1; i++) {
        if (data.cells[k * (data.across - 1) + i] > -2) { cell(frame, i, k, 1); cell(frame, i, k, -1); }
      }
    }
    edges();
    const warm = data.tenths[frame].filter(v => v > -5000), most = Math.max(...warm) / 10, least = Math.min(...warm) / 10;
    const step = [1, 2, 5, 10, 20].find(s => (most - least) / s <= 6) ?? 20;
    pen.font = "13px sans-serif"; pen.textAlign = "center";
    for (let c = Math.ceil(least / step) * step; c < most; c += step) {
      pen.strokeStyle = "rgba(255,255,255,.85)"; pen.lineWidth = 1;
      const label = level(frame, c);
      if (label) {
        const [x, y] = place(label[0], label[1]);
        pen.lineWidth = 3; pen.strokeStyle = "rgba(20,20,30,.8)"; pen.strokeText(c, x, y + 4); pen.fillStyle = "#fff"; pen.fillText(c, x, y + 4);
      }
    }
    const words = `${data.hours[frame].toFixed(1)} h after the first pour: ${most.toFixed(0)} °C at most`;
    out.textContent = words;
    slider.setAttribute("aria-valuetext", words);
  };

  const halt = () => { clearInterval(timer); timer = 0; play.textContent = "Play"; };
  const start = () => {
    if (Number(slider.value) >= Number(slider.max)) { slider.value = 0; }
    play.textContent = "Stop";
    timer = setInterval(() => { slider.value = Number(slider.value) + 1; paint(); if (Number(slider.value) >= Number(slider.max)) { halt(); } }, still.matches ? 1200 : 220);
  };
  const press = () => (timer ? halt() : start());
  const move = () => { halt(); paint(); };
  play.addEventListener("click", press);
  slider.addEventListener("input", move);

  return {
    show(sent) {
      data = sent;
      const right = Math.max(...data.x), bottom = Math.min(...data.z), top = Math.max(...data.z);
      scale = Math.min((canvas.width - 30) / (2 * right), (canvas.height - 30) / (top - bottom));
      midX = canvas.width / 2; foot = (canvas.height + (top + bottom) * scale) / 2;
      const all = data.tenths.flat().filter(v => v > -5000);
      low = Math.min(...all.slice(0, 50_000), all.reduce((a, b) => Math.min(a, b), 9999)) / 10;
      high = Math.max(low + 5, all.reduce((a, b) => Math.max(a, b), -9999) / 10);
      slider.max = data.hours.length - 1;
      let best = 0, hot = -1e9;
      data.tenths.forEach((f, i) => { const m = f.reduce((a, b) => Math.max(a, b), -1e9); if (m > hot) { hot = m; best = i; } });
      slider.value = best;
      paint();
    },
    stop() { halt(); play.removeEventListener("click", press); slider.removeEventListener("input", move); },
  };
}
