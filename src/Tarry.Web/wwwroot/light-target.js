// Changes the patch with the least delay: a canvas that need not wait for the page's own drawing, painted where the press is heard.
let stop = null;

export function begin(canvas, count, by, mode, mostInASecond) {
  end();
  const paint = canvas.getContext("2d", { alpha: false, desynchronized: true });
  const lightings = [];
  let lit = false, held = false, presses = 0, withheld = 0, told = false;

  const show = light => {
    lit = light;
    paint.fillStyle = light ? "#fff" : "#000";
    paint.fillRect(0, 0, canvas.width, canvas.height);
  };
  const mayLight = () => {
    if (!mostInASecond) return true;
    const now = performance.now();
    while (lightings.length && now - lightings[0] > 1000) lightings.shift();
    return lightings.length < mostInASecond && lightings.push(now);
  };
  const press = pressed => {
    if (pressed === held) return;
    held = pressed;
    const light = mode === "turn" ? (pressed ? !lit : lit) : pressed;
    if (light !== lit && (!light || mayLight())) show(light);
    else if (light !== lit) withheld++;
    if (pressed) presses++;
    if (!told) { told = true; setTimeout(tell, 250); }
  };
  const tell = () => {
    told = false;
    count.textContent = `Presses: ${presses}.` + (withheld ? ` ${withheld} were not shown, because more than ${mostInASecond} in a second are not allowed at this size.` : "");
  };

  show(false);
  if (by === "key") {
    const isField = event => /^(INPUT|SELECT|TEXTAREA|BUTTON|A)$/.test(event.target.tagName);
    const down = event => { if (!isField(event) && !event.repeat && event.key !== "Tab") press(true); };
    const up = event => { if (!isField(event)) press(false); };
    addEventListener("keydown", down);
    addEventListener("keyup", up);
    stop = () => { removeEventListener("keydown", down); removeEventListener("keyup", up); };
  } else if (by === "program") {
    const source = new EventSource("target/presses");
    source.onmessage = event => press(event.data === "1");
    stop = () => source.close();
  } else {
    let frame = 0;
    const look = () => {
      frame = requestAnimationFrame(look);
      press(navigator.getGamepads().some(pad => pad && (pad.buttons.some(button => button.pressed) || pad.axes.some(axis => Math.abs(axis) > 0.5))));
    };
    look();
    stop = () => cancelAnimationFrame(frame);
  }
  canvas.dataset.listens = by;
}

export function end() {
  stop?.();
  stop = null;
}
