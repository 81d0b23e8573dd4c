// A part of the page imports the style sheet that stands beside it; the build puts them together.

declare module '*.css';
