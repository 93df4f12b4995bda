/** Reads what somebody asks for in a line of text, and says what was told and what was assumed. */
package headrace.data.inquiry;
