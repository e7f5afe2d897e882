// Lets the worker answer where there is no network. Without it, or without https, the site works with a network alone.
"use strict";
if ("serviceWorker" in navigator) navigator.serviceWorker.register("/worker.js").catch(() => { });
