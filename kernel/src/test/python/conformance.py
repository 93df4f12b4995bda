"""The public suite for kernels, with every attribute set, so that it skips nothing."""

import unittest

import jupyter_kernel_test


class HeadraceConformance(jupyter_kernel_test.KernelTests):
    kernel_name = "headrace"
    language_name = "groovy"
    file_extension = ".groovy"

    code_hello_world = "println 'hello, world'"
    code_stderr = "System.err.println 'to the other stream'"

    completion_samples = [
        {"text": "litres = 3; litr", "matches": {"litres"}},
        {"text": "hiddenInp", "matches": {"hiddenInput"}},
        {"text": "'abc'.toUpperC", "matches": {"toUpperCase"}},
    ]

    complete_code_samples = ["1", "println 'hello, world'", "def twice(x) { 2 * x }", "?fit"]
    incomplete_code_samples = ["def twice(x) {", "println '''hello", "[1, 2,", "3 +"]
    invalid_code_samples = ["x = )", "x + * 2", "'abc"]

    code_page_something = "?fit"
    code_generate_error = "throw new IllegalStateException('no flow')"

    code_execute_result = [
        {"code": "6*7", "result": "42"},
        {"code": "'abc'.toUpperCase()", "result": "ABC"},
        {"code": "x = 2; x + 0.5", "result": "2.5"},
        {"code": "52.m3ph", "mime": "text/plain"},
    ]
    code_display_data = [
        {"code": "show(52.m3ph)", "mime": "text/plain"},
        {"code": "show([flow: 1, head: 2])", "mime": "text/plain"},
    ]

    code_history_pattern = "6?7"
    supported_history_operations = ("tail", "range", "search")

    code_inspect_sample = "fit"
    code_clear_output = "clear()"


if __name__ == "__main__":
    unittest.main()
