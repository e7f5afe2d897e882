// Keeps the board as the shop is: looks again whenever the server says that something changed, or every half minute without that.
(() => {
  "use strict";
  const board = document.getElementById("board");
  const lookAgain = 30000;
  let timer = 0;
  let looking = false;
  let asked = false;

  async function look() {
    if (looking) { asked = true; return; }
    looking = true;
    try {
      const page = await fetch(location.href, { headers: { Accept: "text/html" } });
      const fresh = new DOMParser().parseFromString(await page.text(), "text/html").getElementById("board");
      if (fresh) {
        const line = fresh.querySelector("#news");
        board.replaceChildren(...fresh.childNodes);
        board.dataset.stamp = fresh.dataset.stamp;
        if (line) line.textContent = document.body.dataset.live ?? "";
      }
    } catch {
      document.getElementById("news").textContent = board.dataset.old;
    }
    looking = false;
    if (asked) { asked = false; look(); }
  }

  function tell(text) {
    document.body.dataset.live = text;
    document.getElementById("news").textContent = text;
  }

  if (typeof EventSource === "undefined") {
    setInterval(look, lookAgain);
    return;
  }
  const news = new EventSource(board.dataset.news);
  news.onopen = () => { clearInterval(timer); tell(board.dataset.live); };
  news.onmessage = event => { if (event.data !== board.dataset.stamp) look(); };
  news.onerror = () => {
    clearInterval(timer);
    timer = setInterval(look, lookAgain);
    tell(board.dataset.polling);
  };
})();
