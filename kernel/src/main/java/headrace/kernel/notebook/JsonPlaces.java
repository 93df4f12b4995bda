package headrace.kernel.notebook;

import headrace.problem.Place;

/** Finds the line and column of a value in a JSON text that is known to be well formed. */
final class JsonPlaces {
    private final String text;
    private int at;

    private JsonPlaces(String text) {
        this.text = text;
    }

    /**
     * Returns where a value begins.
     *
     * @param path keys as texts and places in lists as whole numbers, from the outermost
     */
    static Place of(String text, String file, Object... path) {
        JsonPlaces places = new JsonPlaces(text);
        places.skipBlanks();
        for (Object step : path) {
            boolean found = step instanceof Integer index ? places.enterList(index) : places.enterObject((String) step);
            if (!found) {
                break;
            }
        }
        return at(text, places.at, file);
    }

    /** Returns the line and column of an index in the text. */
    static Place at(String text, int index, String file) {
        int line = 1;
        int start = 0;
        for (int i = 0; i < index; i++) {
            if (text.charAt(i) == '\n') {
                line++;
                start = i + 1;
            }
        }
        return new Place(file, line, index - start + 1);
    }

    private boolean enterList(int index) {
        int start = at;
        at++;
        skipBlanks();
        for (int i = 0; i < index; i++) {
            if (text.charAt(at) == ']') {
                at = start;
                return false;
            }
            skipValue();
            skipBlanks();
            at++;
            skipBlanks();
        }
        return true;
    }

    private boolean enterObject(String key) {
        int start = at;
        at++;
        skipBlanks();
        while (text.charAt(at) == '"') {
            int before = at;
            skipText();
            boolean found = text.substring(before + 1, at - 1).equals(key);
            skipBlanks();
            at++;
            skipBlanks();
            if (found) {
                return true;
            }
            skipValue();
            skipBlanks();
            at++;
            skipBlanks();
        }
        at = start;
        return false;
    }

    private void skipValue() {
        int depth = 0;
        do {
            char c = text.charAt(at);
            if (c == '"') {
                skipText();
                continue;
            }
            if (c == '{' || c == '[') {
                depth++;
            } else if (c == '}' || c == ']') {
                depth--;
            }
            at++;
        } while (at < text.length() && (depth > 0 || ",]} \t\r\n".indexOf(text.charAt(at)) < 0));
    }

    private void skipText() {
        at++;
        while (text.charAt(at) != '"') {
            at += text.charAt(at) == '\\' ? 2 : 1;
        }
        at++;
    }

    private void skipBlanks() {
        while (at < text.length() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
    }
}
