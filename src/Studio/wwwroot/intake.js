// The intake's own hands: photographs go off while the person types, and what is typed survives a lost connection.
// The list of photographs belongs to this script alone; the server only ever asks for what was kept.
const mostBytes = 40 * 1024 * 1024;
const atOnce = 2;
const triesBeforeAsking = 3;
const store = (key, value) => { try { value === null ? localStorage.removeItem("draft:" + key) : localStorage.setItem("draft:" + key, value); } catch { /* a full or closed store only costs the draft */ } };
const stored = (key) => { try { return localStorage.getItem("draft:" + key); } catch { return null; } };
const el = (tag, className, text) => { const e = document.createElement(tag); if (className) { e.className = className; } if (text) { e.textContent = text; } return e; };

class Tray {
  constructor(root, key) {
    this.root = root;
    this.key = key;
    this.list = root.querySelector("[data-tray]");
    this.said = root.querySelector("[data-said]");
    this.photos = [];
    this.waiting = [];
    const take = (input) => { this.add([...input.files]); input.value = ""; };
    this.onPick = (e) => { if (e.target.matches("input[type=file]")) take(e.target); };
    this.onOnline = () => this.photos.filter((p) => p.state === "broken").forEach((p) => this.again(p));
    root.addEventListener("change", this.onPick);
    window.addEventListener("online", this.onOnline);
    this.restore();
    // chosen before this script listened: over a poor connection that takes a while
    for (const input of root.querySelectorAll("input[type=file]")) if (input.files.length > 0) take(input);
  }

  restore() {
    if (!this.key) { return; }
    for (const kept of JSON.parse(stored(this.key) || "[]")) {
      const photo = this.line(kept.name);
      Object.assign(photo, { id: kept.id, hash: kept.hash });
      this.kept(photo);
    }
  }

  add(files) {
    for (const file of files) {
      const photo = this.line(file.name);
      photo.file = file;
      photo.url = URL.createObjectURL(file);
      photo.picture.src = photo.url;
      if (file.size > mostBytes) { this.refused(photo, "The file is larger than 40 MB. Save the picture smaller, or as a JPEG, and choose it again."); continue; }
      this.again(photo);
    }
  }

  line(name) {
    const item = el("li", "photo sending");
    const picture = el("img");
    picture.alt = name ? "Photograph " + name : "Photograph";
    picture.onerror = () => { picture.hidden = true; };
    const bar = el("progress");
    bar.max = 100;
    bar.setAttribute("aria-label", "Sending " + (name || "the photograph"));
    const words = el("p", "words", "Waiting");
    const act = el("button", "act", "Remove");
    act.type = "button";
    item.append(picture, bar, words, act);
    this.list.append(item);
    const photo = { name, item, picture, bar, words, act, state: "sending", tries: 0 };
    act.onclick = () => this.remove(photo);
    this.photos.push(photo);
    return photo;
  }

  show(photo, state, words, act) {
    photo.state = state;
    photo.item.className = "photo " + state;
    photo.words.textContent = words;
    photo.act.textContent = act;
    photo.act.setAttribute("aria-label", act + (photo.name ? ": " + photo.name : ""));
    photo.bar.hidden = state !== "sending";
    this.tell();
  }

  tell() {
    const count = (s) => this.photos.filter((p) => p.state === s).length;
    const kept = count("kept"), sending = count("sending");
    const parts = [];
    if (kept) { parts.push(kept === 1 ? "1 photograph is kept" : kept + " photographs are kept"); }
    if (sending) { parts.push(sending + " on the way"); }
    if (this.said.textContent !== parts.join(", ")) { this.said.textContent = parts.join(", "); }
    if (this.key) {
      const keep = this.photos.filter((p) => p.state === "kept").map((p) => ({ id: p.id, hash: p.hash, name: p.name }));
      store(this.key, keep.length ? JSON.stringify(keep) : null);
    }
    if (!sending && this.settling) { this.settling(); this.settling = null; }
  }

  again(photo) {
    this.show(photo, "sending", "Waiting", "Stop");
    this.waiting.push(photo);
    this.pump();
  }

  pump() {
    while (this.waiting.length && this.photos.filter((p) => p.request).length < atOnce) {
      const next = this.waiting.shift();
      if (next.state === "sending" && !next.request) { this.send(next); }
    }
  }

  send(photo) {
    const token = (this.root.querySelector("input[name=__RequestVerificationToken]") || document.querySelector("input[name=__RequestVerificationToken]") || {}).value || "";
    const request = new XMLHttpRequest();
    photo.request = request;
    photo.tries++;
    request.open("POST", "/photos");
    request.setRequestHeader("RequestVerificationToken", token);
    request.setRequestHeader("X-File-Name", encodeURIComponent(photo.name || "photograph"));
    request.setRequestHeader("Content-Type", "application/octet-stream");
    request.upload.onprogress = (e) => {
      if (e.lengthComputable) {
        const percent = Math.round(100 * e.loaded / e.total);
        photo.bar.value = percent;
        photo.words.textContent = percent < 100 ? percent + " %" : "Being looked at";
      }
    };
    request.onload = () => this.answered(photo, request);
    request.onerror = () => this.broke(photo);
    request.onabort = () => { photo.request = null; this.pump(); };
    request.send(photo.file);
    photo.words.textContent = "0 %";
  }

  answered(photo, request) {
    photo.request = null;
    let answer = null;
    try { answer = JSON.parse(request.responseText); } catch { /* a page instead of an answer */ }
    if (request.status === 200 && answer && answer.id) {
      Object.assign(photo, { id: answer.id, hash: answer.hash });
      this.kept(photo);
    } else if (answer && answer.words) {
      this.refused(photo, answer.words);
    } else if (request.status === 401 || request.responseURL.includes("/sign-in")) {
      this.show(photo, "broken", "You are signed out. Sign in again; what you typed is kept on this device.", "Send again");
      photo.act.onclick = () => this.again(photo);
    } else {
      this.broke(photo);
    }
    this.pump();
  }

  kept(photo) {
    photo.picture.hidden = false;
    photo.picture.src = "/photos/" + photo.hash + "/small";
    if (photo.url) { URL.revokeObjectURL(photo.url); photo.url = null; }
    photo.file = null;
    photo.act.onclick = () => this.remove(photo);
    this.show(photo, "kept", "", "Remove");
  }

  refused(photo, words) {
    photo.act.onclick = () => { photo.item.remove(); this.photos = this.photos.filter((p) => p !== photo); this.tell(); };
    this.show(photo, "refused", (photo.name ? photo.name + ": " : "") + words, "Put aside");
    this.said.textContent = words;
  }

  broke(photo) {
    photo.request = null;
    photo.act.onclick = () => this.again(photo);
    this.show(photo, "broken", "The connection broke off. The photograph is still on this page.", "Send again");
    if (photo.tries < triesBeforeAsking) { setTimeout(() => { if (photo.state === "broken") { this.again(photo); } }, 1500 * photo.tries); }
    this.pump();
  }

  remove(photo) {
    const before = photo.state;
    if (photo.request) { photo.request.abort(); }
    this.show(photo, "removed", "Taken off this keepsake.", "Bring back");
    photo.act.onclick = () => { if (before === "kept") { this.kept(photo); } else { this.again(photo); } };
  }

  // every photograph that is still on its way is waited for; one that cannot be sent is not
  settled() {
    return this.photos.some((p) => p.state === "sending") ? new Promise((done) => { this.settling = done; }) : Promise.resolve();
  }

  clear() {
    this.photos.forEach((p) => { if (p.request) { p.request.onabort = null; p.request.abort(); } if (p.url) { URL.revokeObjectURL(p.url); } });
    this.photos = [];
    this.waiting = [];
    this.list.replaceChildren();
    this.tell();
    this.said.textContent = "";
  }

  ids() { return this.photos.filter((p) => p.state === "kept").map((p) => p.id); }

  lost() { return this.photos.filter((p) => p.state === "refused" || p.state === "broken").length; }

  dispose() {
    this.root.removeEventListener("change", this.onPick);
    window.removeEventListener("online", this.onOnline);
  }
}

class Words {
  constructor(form, key) {
    this.form = form;
    this.key = key;
    this.onInput = () => this.keep();
    form.addEventListener("input", this.onInput);
    form.addEventListener("change", this.onInput);
  }

  values() {
    const all = {};
    for (const [name, value] of new FormData(this.form)) {
      if (typeof value === "string" && !name.startsWith("_")) { (all[name] ||= []).push(value); }
    }
    return all;
  }

  keep() { store(this.key, JSON.stringify(this.values())); }

  drop() { store(this.key, null); }

  dispose() {
    this.form.removeEventListener("input", this.onInput);
    this.form.removeEventListener("change", this.onInput);
  }
}

export const tray = (root, key) => new Tray(root, key);
export const words = (form, key) => new Words(form, key);
export const draft = (key) => JSON.parse(stored(key) || "null");
export const top = (selector) => { const e = document.querySelector(selector); if (e) { e.scrollIntoView({ block: "start" }); e.focus({ preventScroll: true }); } };
export const firstWrong = () => {
  const e = document.querySelector("[aria-invalid=true], .wrong");
  if (e) { e.scrollIntoView({ block: "center" }); if (e.focus) { e.focus({ preventScroll: true }); } }
};

// Labels are read by the browser itself where it can; elsewhere the phone's own camera opens the address on the label.
class Scan {
  constructor(video, net) {
    this.video = video;
    this.net = net;
  }

  async start() {
    if (!("BarcodeDetector" in window) || !navigator.mediaDevices) { return "none"; }
    try {
      this.stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
    } catch {
      return "refused";
    }
    this.video.srcObject = this.stream;
    await this.video.play();
    const detector = new BarcodeDetector({ formats: ["qr_code"] });
    this.timer = setInterval(async () => {
      try {
        const found = await detector.detect(this.video);
        if (found.length && this.timer) { await this.net.invokeMethodAsync("ReadAsync", found[0].rawValue); }
      } catch { /* a frame that cannot be read: the next one comes */ }
    }, 300);
    return "looking";
  }

  dispose() {
    clearInterval(this.timer);
    this.timer = null;
    if (this.stream) { this.stream.getTracks().forEach((t) => t.stop()); }
  }
}

export const scan = (video, net) => new Scan(video, net);
