// Sends dropped or chosen files to the program, one after the other, and tells the page how far each has come.
const sending = new Map();

export function listen(area, chooser, page) {
  const over = on => event => {
    if (![...event.dataTransfer.types].includes("Files")) return;
    event.preventDefault();
    area.classList.toggle("over", on);
  };
  area.addEventListener("dragenter", over(true));
  area.addEventListener("dragover", over(true));
  area.addEventListener("dragleave", over(false));
  area.addEventListener("drop", event => {
    over(false)(event);
    sendAll(event.dataTransfer.files, page);
  });
  chooser.addEventListener("change", () => {
    sendAll(chooser.files, page).finally(() => { chooser.value = ""; });
  });
  area.dataset.listens = "";
}

export function stop(number) {
  sending.get(number)?.abort();
}

let numbers = 0;

async function sendAll(files, page) {
  for (const file of files) await send(file, ++numbers, page);
}

function send(file, number, page) {
  return new Promise(resolve => {
    const request = new XMLHttpRequest();
    sending.set(number, request);
    let told = 0;
    const end = (method, ...rest) => {
      sending.delete(number);
      page.invokeMethodAsync(method, number, ...rest).finally(resolve);
    };
    request.open("POST", `/uploads?name=${encodeURIComponent(file.name)}`);
    request.setRequestHeader("X-Tarry-Upload", "1");
    request.upload.addEventListener("progress", event => {
      if (event.timeStamp - told < 200) return;
      told = event.timeStamp;
      page.invokeMethodAsync("Sending", number, file.name, Math.round(100 * event.loaded / Math.max(1, event.total)));
    });
    request.addEventListener("load", () => {
      const answer = parsed(request.responseText);
      if (request.status === 200) end("Sent", answer.id);
      else end("NotSent", file.name, answer.problem ?? `The program answered ${request.status}.`, answer.remedy ?? "Try again.");
    });
    request.addEventListener("error", () => end("NotSent", file.name, "The program could not be reached, or broke off.", "See that tarry serve runs, then bring it in again."));
    request.addEventListener("abort", () => end("Stopped"));
    request.send(file);
  });
}

function parsed(text) {
  try { return JSON.parse(text) ?? {}; } catch { return {}; }
}
