"""The public suite for kernels, for cells of Java, with every attribute set, so that it skips nothing."""

import unittest

import jupyter_kernel_test


class HeadraceJavaConformance(jupyter_kernel_test.KernelTests):
    kernel_name = "headrace-java"
    language_name = "java"
    file_extension = ".java"

    code_hello_world = 'System.out.println("hello, world");'
    code_stderr = 'System.err.println("to the other stream");'

    completion_samples = [
        {"text": "var risers = 3; riser", "matches": {"risers"}},
        {"text": "hiddenInp", "matches": {"hiddenInput"}},
        {"text": '"abc".toUpperC', "matches": {"toUpperCase("}},
    ]

    complete_code_samples = ["1", 'System.out.println("hello");', "int twice(int x) { return 2 * x; }", "?fit"]
    incomplete_code_samples = ["int twice(int x) {", 'String s = """\nhello', "List.of(1, 2,", "3 +"]
    invalid_code_samples = ["x = )", "x + * 2", '"abc']

    code_page_something = "?fit"
    code_generate_error = 'throw new IllegalStateException("no flow");'

    code_execute_result = [
        {"code": "6*7", "result": "42"},
        {"code": '"abc".toUpperCase()', "result": "ABC"},
        {"code": "double x = 2; x + 0.5", "result": "2.5"},
        {"code": "m3ph(52)", "mime": "text/plain"},
    ]
    code_display_data = [
        {"code": "show(m3ph(52));", "mime": "text/plain"},
        {"code": 'show(Map.of("flow", 1));', "mime": "text/plain"},
    ]

    code_history_pattern = "6?7"
    supported_history_operations = ("tail", "range", "search")

    code_inspect_sample = "fit"
    code_clear_output = "clear();"


if __name__ == "__main__":
    unittest.main()
