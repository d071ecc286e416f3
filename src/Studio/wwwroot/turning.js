// Draws the parts of a piece that the server has cut, and turns them by hand, by keys, or slowly by itself.
const vertex = `#version 300 es
in vec3 at; uniform mat4 look; uniform mat4 lens; out vec3 seen;
void main() { vec4 p = look * vec4(at * 1.02396875, 1.0); seen = p.xyz; gl_Position = lens * p; }`;
// the facet's own normal from its slope on the screen: no normals need be sent
const fragment = `#version 300 es
precision highp float; in vec3 seen; uniform vec4 tint; uniform float flatness; uniform float glassy; out vec4 colour;
void main() {
  vec3 n = normalize(cross(dFdx(seen), dFdy(seen)));
  float light = mix(0.62 + 0.38 * abs(dot(n, normalize(vec3(-0.35, 0.75, 0.55)))), 1.0, flatness);
  // glass shows most where it is seen along its face
  float a = tint.a * mix(1.0, 0.35 + 2.6 * pow(1.0 - abs(dot(n, normalize(seen))), 2.0), glassy);
  colour = vec4(tint.rgb * light * a, a);
}`;
const rank = { former: 0, sheet: 1, layer: 2, top: 3, glass: 4, line: 5 };
const first = { yaw: -0.55, pitch: 0.36, zoom: 1 };

export function begin(box) {
  const canvas = box.querySelector("canvas");
  const stops = [];
  const on = (target, name, act, how) => { target.addEventListener(name, act, how); stops.push(() => target.removeEventListener(name, act, how)); };
  const still = matchMedia("(prefers-reduced-motion: reduce)");
  const spinner = box.querySelector("[data-act=spin]");
  let gl = null, program = null, parts = [], sent = [], pose = { ...first }, asked = 0, spinning = false, before = 0;

  const shader = (kind, text) => { const s = gl.createShader(kind); gl.shaderSource(s, text); gl.compileShader(s); return s; };
  const prepare = () => {
    gl ??= canvas.getContext("webgl2", { antialias: true, alpha: true, premultipliedAlpha: true });
    if (!gl) { return false; }
    program = gl.createProgram();
    gl.attachShader(program, shader(gl.VERTEX_SHADER, vertex));
    gl.attachShader(program, shader(gl.FRAGMENT_SHADER, fragment));
    gl.linkProgram(program);
    return gl.getProgramParameter(program, gl.LINK_STATUS);
  };
  const hex = (text, otherwise) => {
    const m = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(text.length === 4 ? text.replace(/[0-9a-f]/gi, "$&$&") : text);
    return m ? m.slice(1).map((h) => parseInt(h, 16) / 255) : otherwise;
  };
  const ours = (name, otherwise) => hex(getComputedStyle(canvas).getPropertyValue(name).trim(), otherwise);

  const load = () => {
    parts.forEach((p) => { gl.deleteVertexArray(p.shape); p.buffers.forEach((b) => gl.deleteBuffer(b)); });
    parts = sent.map((p) => {
      const shape = gl.createVertexArray(), buffers = [gl.createBuffer(), gl.createBuffer()];
      gl.bindVertexArray(shape);
      gl.bindBuffer(gl.ARRAY_BUFFER, buffers[0]);
      gl.bufferData(gl.ARRAY_BUFFER, p.points, gl.STATIC_DRAW);
      const at = gl.getAttribLocation(program, "at");
      gl.enableVertexAttribArray(at);
      gl.vertexAttribPointer(at, 3, gl.SHORT, true, 0, 0);
      gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, buffers[1]);
      gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, p.corners, gl.STATIC_DRAW);
      gl.bindVertexArray(null);
      return { ...p, shape, buffers, z: p.points.byteLength > 5 ? new DataView(p.points.buffer, p.points.byteOffset).getInt16(4, true) : 0, count: p.corners.byteLength / (p.wide ? 4 : 2), type: p.wide ? gl.UNSIGNED_INT : gl.UNSIGNED_SHORT, rank: rank[p.kind] };
    });
  };

  const look = () => {
    const [cy, sy, cp, sp] = [Math.cos(pose.yaw), Math.sin(pose.yaw), Math.cos(pose.pitch), Math.sin(pose.pitch)];
    // turn about the upright axis, then tip towards the viewer, then step back; columns
    return new Float32Array([cy, sy * sp, -sy * cp, 0, -sy, cy * sp, -cy * cp, 0, 0, cp, sp, 0, 0, 0, -3.6 / pose.zoom, 1]);
  };
  const lens = () => {
    const f = 1 / Math.tan(0.3), near = 0.05, far = 20, wide = canvas.width / Math.max(1, canvas.height), fit = Math.min(1, wide);
    return new Float32Array([f * fit / wide, 0, 0, 0, 0, f * fit, 0, 0, 0, 0, (far + near) / (near - far), -1, 0, 0, 2 * far * near / (near - far), 0]);
  };

  const draw = (now) => {
    asked = 0;
    if (!gl || gl.isContextLost()) { return; }
    if (spinning) { pose.yaw += Math.min(0.1, (now - before) / 1000) * 0.45; before = now; ask(); }
    const ratio = Math.min(2, devicePixelRatio || 1), [w, h] = [Math.round(canvas.clientWidth * ratio), Math.round(canvas.clientHeight * ratio)];
    if (canvas.width !== w || canvas.height !== h) { canvas.width = w; canvas.height = h; }
    const ink = ours("--ink", [0.12, 0.17, 0.2]), paper = ours("--card", [1, 0.99, 0.98]), card = paper.map((c, i) => 0.8 * c + 0.2 * ink[i]);
    gl.viewport(0, 0, w, h);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.useProgram(program);
    gl.uniformMatrix4fv(gl.getUniformLocation(program, "look"), false, look());
    gl.uniformMatrix4fv(gl.getUniformLocation(program, "lens"), false, lens());
    gl.enable(gl.DEPTH_TEST);
    gl.depthFunc(gl.LEQUAL);
    gl.enable(gl.BLEND);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
    const [tint, flatness, glassy] = ["tint", "flatness", "glassy"].map((name) => gl.getUniformLocation(program, name));
    const paint = (p, colour, strength, flat) => {
      gl.uniform4f(tint, ...colour, strength);
      gl.uniform1f(flatness, flat);
      gl.uniform1f(glassy, p.kind === "glass" ? 1 : 0);
      gl.bindVertexArray(p.shape);
      gl.drawElements(p.kind === "line" ? gl.LINES : gl.TRIANGLES, p.count, p.type, 0);
    };
    const of = (...kinds) => parts.filter((p) => kinds.includes(p.kind));
    gl.disable(gl.CULL_FACE);
    gl.depthMask(true);
    of("former", "sheet").sort((a, b) => a.rank - b.rank).forEach((p) => paint(p, p.colour ? hex(p.colour, card) : card, p.strength, 0));
    // seen through: the far walls, the flat faces from the far one to the near one, the near walls
    gl.depthMask(false);
    gl.enable(gl.CULL_FACE);
    gl.cullFace(gl.FRONT);
    of("layer").forEach((p) => paint(p, hex(p.colour, card), p.strength, 0));
    of("glass").forEach((p) => paint(p, ink, p.strength * 0.6, 1));
    gl.disable(gl.CULL_FACE);
    const up = Math.sin(pose.pitch) >= 0 ? 1 : -1;
    of("top").sort((a, b) => up * (a.z - b.z)).forEach((p) => paint(p, hex(p.colour, card), p.strength, 0));
    gl.enable(gl.CULL_FACE);
    gl.cullFace(gl.BACK);
    of("layer").forEach((p) => paint(p, hex(p.colour, card), p.strength * 0.8, 0));
    of("glass").forEach((p) => paint(p, ink, p.strength, 1));
    gl.disable(gl.CULL_FACE);
    of("line").forEach((p) => paint(p, ink, p.strength * 0.7, 1));
    gl.bindVertexArray(null);
    if (parts.length > 0) { canvas.dataset.drawn = parts.length; }
  };
  const ask = () => { if (!asked) { asked = requestAnimationFrame(draw); } };

  const turn = (yaw, pitch) => { pose.yaw += yaw; pose.pitch = Math.max(-1.5, Math.min(1.5, pose.pitch + pitch)); ask(); };
  const zoom = (by) => { pose.zoom = Math.max(0.5, Math.min(5, pose.zoom * by)); ask(); };
  const spin = (yes) => { spinning = yes && !still.matches; spinner?.setAttribute("aria-pressed", String(spinning)); before = performance.now(); ask(); };
  const acts = {
    left: () => turn(-0.15, 0), right: () => turn(0.15, 0), up: () => turn(0, 0.12), down: () => turn(0, -0.12),
    nearer: () => zoom(1.18), farther: () => zoom(1 / 1.18), first: () => { spin(false); pose = { ...first }; ask(); }, spin: () => spin(!spinning),
  };
  const keys = { ArrowLeft: "left", ArrowRight: "right", ArrowUp: "up", ArrowDown: "down", "+": "nearer", "=": "nearer", "-": "farther", "_": "farther", Home: "first" };

  on(box, "click", (event) => acts[event.target.closest("[data-act]")?.dataset.act]?.());
  on(canvas, "keydown", (event) => { const act = keys[event.key]; if (act && !event.ctrlKey && !event.metaKey && !event.altKey) { event.preventDefault(); acts[act](); } });
  // one finger or the mouse turns, two fingers come nearer
  const fingers = new Map();
  let apart = 0;
  on(canvas, "pointerdown", (event) => { if (event.button === 0) { fingers.set(event.pointerId, event); canvas.setPointerCapture(event.pointerId); apart = 0; } });
  on(canvas, "pointermove", (event) => {
    const last = fingers.get(event.pointerId);
    if (!last) { return; }
    fingers.set(event.pointerId, event);
    if (fingers.size === 1) { turn((event.clientX - last.clientX) * 0.01, (event.clientY - last.clientY) * 0.01); return; }
    const [a, b] = [...fingers.values()], now = Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
    if (apart > 0 && now > 0) { zoom(now / apart); }
    apart = now;
  });
  const lift = (event) => { fingers.delete(event.pointerId); apart = 0; };
  on(canvas, "pointerup", lift);
  on(canvas, "pointercancel", lift);
  // a wheel scrolls the page, as elsewhere; with Ctrl, or once the picture has been chosen, it comes nearer
  on(canvas, "wheel", (event) => { if (event.ctrlKey || document.activeElement === canvas) { event.preventDefault(); zoom(Math.exp(-event.deltaY * 0.0015)); } }, { passive: false });
  on(canvas, "webglcontextlost", (event) => event.preventDefault());
  on(canvas, "webglcontextrestored", () => { parts = []; if (prepare()) { load(); ask(); } });
  const quieter = () => { if (spinner) { spinner.hidden = still.matches; } if (still.matches) { spin(false); } };
  on(still, "change", quieter);
  quieter();
  const size = new ResizeObserver(ask), look2 = new MutationObserver(ask), dark = matchMedia("(prefers-color-scheme: dark)");
  size.observe(canvas);
  look2.observe(document.documentElement, { attributes: true, subtree: false });
  on(dark, "change", ask);
  stops.push(() => size.disconnect(), () => look2.disconnect());

  return {
    show(scene) {
      if (!program && !prepare()) { return false; }
      sent = scene;
      load();
      ask();
      return true;
    },
    // for tests and for whoever looks: where the view stands
    pose: () => ({ ...pose, spinning }),
    stop() {
      cancelAnimationFrame(asked);
      stops.forEach((s) => s());
      gl?.getExtension("WEBGL_lose_context")?.loseContext();
    },
  };
}
