/** Makes the kernel known to notebook front ends, and unknown again. */
package headrace.kernel.install;
