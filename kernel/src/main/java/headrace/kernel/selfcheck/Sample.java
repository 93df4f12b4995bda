package headrace.kernel.selfcheck;

/**
 * Cells that say the same in the languages of the kernels.
 *
 * @param print prints the word {@code checked}
 * @param words ends with twice 52 m³/h
 * @param chart ends with something that has a chart
 * @param loop prints, and then never ends
 */
record Sample(String print, String words, String chart, String loop) {
    private static final Sample GROOVY = new Sample(
            "println 'checked'", "52.m3ph * 2", "systemCurve(duty(52.m3ph, 16.m))", "println 'begun'\nwhile (true) {}");
    private static final Sample JAVA = new Sample(
            "System.out.println(\"checked\");",
            "m3ph(52).times(2)",
            "systemCurve(duty(m3ph(52), m(16)))",
            "System.out.println(\"begun\");\nwhile (true) {}");

    /** Returns the cells of a language by its name. */
    static Sample of(String language) {
        return language.equals("java") ? JAVA : GROOVY;
    }
}
