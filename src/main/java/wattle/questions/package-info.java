/** Questions about one house for who learns the trade in it, each with an answer whose figures come from the engine. */
package wattle.questions;
