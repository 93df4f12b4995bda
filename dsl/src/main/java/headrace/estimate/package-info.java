/** Flow and head without a flow meter: from power and speed and the like, with all roots and how sure each is. */
package headrace.estimate;
