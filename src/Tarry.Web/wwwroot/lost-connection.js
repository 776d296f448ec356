// Shows that the window has lost the program, and loads the page again once the program is back.
const dialog = document.getElementById("components-reconnect-modal");

dialog.addEventListener("components-reconnect-state-changed", ({ detail }) => {
  if (detail.state === "show" && !dialog.open) dialog.showModal();
  if (detail.state === "hide") dialog.close();
  if (detail.state === "failed") document.addEventListener("visibilitychange", tryAgain);
  if (detail.state === "rejected") location.reload();
});

document.getElementById("components-reconnect-button").addEventListener("click", tryAgain);

async function tryAgain() {
  document.removeEventListener("visibilitychange", tryAgain);
  try {
    if (!await Blazor.reconnect()) location.reload();
  } catch {
    document.addEventListener("visibilitychange", tryAgain);
  }
}
