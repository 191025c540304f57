/** Changes to plans as text: the formatter, and fixes applied. Knows syntax and findings. */
package wattle.edit;
