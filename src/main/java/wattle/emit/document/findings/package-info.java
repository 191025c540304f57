/** Findings as text for people, JSON for programs and SARIF 2.1.0 for code-review tools; from the data alone. */
package wattle.emit.document.findings;
