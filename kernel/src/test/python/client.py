"""What front ends rely on and the public suite does not look at, through the reference client."""

import os
import time
import unittest

from jupyter_client.manager import KernelManager

TIMEOUT = 60


class Client(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.manager = KernelManager(kernel_name="headrace")
        cls.manager.start_kernel()
        cls.client = cls.manager.client()
        cls.client.start_channels()
        cls.client.wait_for_ready(timeout=TIMEOUT)

    @classmethod
    def tearDownClass(cls):
        cls.client.stop_channels()
        cls.manager.shutdown_kernel()

    def reply(self, msg_id):
        while True:
            message = self.client.get_shell_msg(timeout=TIMEOUT)
            if message["parent_header"].get("msg_id") == msg_id:
                return message

    def events(self, msg_id, until=lambda m: m["content"].get("execution_state") == "idle"):
        heard = []
        while True:
            message = self.client.get_iopub_msg(timeout=TIMEOUT)
            if message["parent_header"].get("msg_id") == msg_id:
                heard.append(message)
                if until(message):
                    return heard

    def run_cell(self, code, **options):
        msg_id = self.client.execute(code, **options)
        return self.reply(msg_id)["content"], self.events(msg_id)

    def begin(self, code):
        msg_id = self.client.execute("println 'begun'\n" + code)
        self.events(msg_id, until=lambda m: m["msg_type"] == "stream")
        return msg_id

    def test_busy_and_idle_surround_every_request(self):
        client = self.client
        for ask in (
            client.kernel_info,
            client.history,
            client.comm_info,
            lambda: client.complete("fi"),
            lambda: client.inspect("fit"),
            lambda: client.is_complete("1"),
            lambda: client.execute("1"),
        ):
            msg_id = ask()
            self.reply(msg_id)
            states = [m["content"]["execution_state"] for m in self.events(msg_id) if m["msg_type"] == "status"]
            self.assertEqual(states, ["busy", "idle"])

    def test_the_session_is_the_kernels_own_and_one(self):
        msg_id = self.client.kernel_info()
        session = self.reply(msg_id)["header"]["session"]
        self.assertNotEqual(session, self.client.session.session)
        self.assertEqual({m["header"]["session"] for m in self.events(msg_id)}, {session})

    def test_loops_and_sleeps_are_interrupted(self):
        for code in ("while (true) {}", "sleep 600_000", "Thread.sleep(600_000)"):
            msg_id = self.begin(code)
            self.manager.interrupt_kernel()
            self.assertEqual(self.reply(msg_id)["content"]["status"], "error")
            self.assertEqual(self.run_cell("1 + 1")[0]["status"], "ok")

    def test_an_idle_kernel_bears_an_interrupt(self):
        # Shell and control are two channels: only the reply tells that the interrupt came before the cell.
        self.client.control_channel.send(self.client.session.msg("interrupt_request", {}))
        self.assertEqual(self.client.get_control_msg(timeout=TIMEOUT)["msg_type"], "interrupt_reply")
        self.assertEqual(self.run_cell("1 + 1")[0]["status"], "ok")

    def ask(self, code):
        msg_id = self.client.execute(code, allow_stdin=True)
        question = self.client.get_stdin_msg(timeout=TIMEOUT)
        self.assertEqual(question["msg_type"], "input_request")
        return msg_id, question["content"]

    def test_a_line_can_be_asked_for(self):
        msg_id, question = self.ask("input('Flow: ') + ' m3/h'")
        self.assertEqual(question, {"prompt": "Flow: ", "password": False})
        self.client.input("52")
        self.assertEqual(self.reply(msg_id)["content"]["status"], "ok")
        result = [m for m in self.events(msg_id) if m["msg_type"] == "execute_result"]
        self.assertEqual(result[0]["content"]["data"]["text/plain"], "52 m3/h")

    def test_a_hidden_line_can_be_asked_for(self):
        msg_id, question = self.ask("hiddenInput('Key: ').size()")
        self.assertTrue(question["password"])
        self.client.input("sesame")
        self.assertEqual(self.reply(msg_id)["content"]["status"], "ok")

    def test_standard_input_asks_line_by_line(self):
        msg_id, _ = self.ask("r = System.in.newReader(); [r.readLine(), r.readLine()]")
        self.client.input("one")
        self.client.get_stdin_msg(timeout=TIMEOUT)
        self.client.input("two")
        self.assertEqual(self.reply(msg_id)["content"]["status"], "ok")
        result = [m for m in self.events(msg_id) if m["msg_type"] == "execute_result"]
        self.assertIn("one", result[0]["content"]["data"]["text/plain"])
        self.assertIn("two", result[0]["content"]["data"]["text/plain"])

    def test_where_nobody_can_be_asked_the_cell_fails_at_once(self):
        content, _ = self.run_cell("input('Flow: ')", allow_stdin=False)
        self.assertEqual(content["status"], "error")
        self.assertEqual(content["ename"], "nobody-to-ask")

    def test_an_interrupt_frees_a_cell_that_waits_for_a_line(self):
        msg_id, _ = self.ask("input('Flow: ')")
        self.manager.interrupt_kernel()
        self.assertEqual(self.reply(msg_id)["content"]["status"], "error")

    def test_a_later_cell_shows_anew_what_an_earlier_one_showed(self):
        _, first = self.run_cell("show(1, place: 'p')")
        _, second = self.run_cell("show(2, place: 'p')")
        shown = [m["content"] for m in first if m["msg_type"] == "display_data"][0]
        anew = [m["content"] for m in second if m["msg_type"] == "update_display_data"][0]
        self.assertEqual(shown["transient"], anew["transient"])
        self.assertEqual(anew["data"]["text/plain"], "2")

    def test_of_twenty_thousand_lines_none_is_lost(self):
        _, events = self.run_cell("20_000.times { println it }")
        streams = [m["content"]["text"] for m in events if m["msg_type"] == "stream"]
        self.assertEqual("".join(streams).split(), [str(i) for i in range(20_000)])
        self.assertLess(len(streams), 100)

    def test_an_unknown_comm_target_is_closed(self):
        message = self.client.session.msg("comm_open", {"comm_id": "c1", "target_name": "nowhere", "data": {}})
        self.client.shell_channel.send(message)
        closed = self.events(message["header"]["msg_id"], until=lambda m: m["msg_type"] == "comm_close")
        self.assertEqual(closed[-1]["content"]["comm_id"], "c1")

    def test_an_unknown_request_does_no_harm(self):
        message = self.client.session.msg("rumour_request", {})
        self.client.shell_channel.send(message)
        self.events(message["header"]["msg_id"])
        self.assertEqual(self.run_cell("1")[0]["status"], "ok")

    def test_unsigned_and_garbled_messages_do_no_harm(self):
        socket = self.client.shell_channel.socket
        socket.send_multipart([b"<IDS|MSG>", b"", b"{}", b"{}", b"{}", b"{}"])
        socket.send_multipart([b"rubbish"])
        socket.send_multipart([b"<IDS|MSG>", b"f" * 64, b"\xff", b"[", b"{", b"null"])
        self.assertEqual(self.run_cell("1")[0]["status"], "ok")

    def test_the_control_channel_answers_while_a_cell_runs(self):
        msg_id = self.begin("while (true) {}")
        message = self.client.session.msg("kernel_info_request", {})
        self.client.control_channel.send(message)
        reply = self.client.get_control_msg(timeout=TIMEOUT)
        self.assertEqual(reply["msg_type"], "kernel_info_reply")
        self.manager.interrupt_kernel()
        self.reply(msg_id)

    def test_code_points_count_as_one(self):
        code = "\U0001d702 = 0.7; '\U0001d702'.toUpperC"
        reply = self.reply(self.client.complete(code, len(code)))["content"]
        self.assertEqual(reply["matches"], ["toUpperCase"])
        self.assertEqual((reply["cursor_start"], reply["cursor_end"]), (len(code) - len("toUpperC"), len(code)))


class Restart(unittest.TestCase):
    def test_a_restarted_kernel_has_another_session_and_remembers_nothing(self):
        manager = KernelManager(kernel_name="headrace")
        manager.start_kernel()
        client = manager.client()
        client.start_channels()
        client.wait_for_ready(timeout=TIMEOUT)
        sessions = []
        for expected in ("ok", "error"):
            client.kernel_info()
            sessions.append(client.get_shell_msg(timeout=TIMEOUT)["header"]["session"])
            if expected == "ok":
                client.execute_interactive("remembered = 1", timeout=TIMEOUT, output_hook=lambda m: None)
            reply = client.execute_interactive("remembered", timeout=TIMEOUT, output_hook=lambda m: None)
            self.assertEqual(reply["content"]["status"], expected)
            if expected == "ok":
                manager.restart_kernel()
                client.wait_for_ready(timeout=TIMEOUT)
        self.assertNotEqual(sessions[0], sessions[1])
        client.stop_channels()
        manager.shutdown_kernel()
        self.assertFalse(manager.is_alive())

    def test_a_kernel_whose_front_end_was_killed_ends(self):
        parent = os.fork()
        if parent == 0:
            manager = KernelManager(kernel_name="headrace", connection_file=os.environ["HOME"] + "/orphan.json")
            manager.start_kernel()
            client = manager.client()
            client.start_channels()
            client.wait_for_ready(timeout=TIMEOUT)
            with open(os.environ["HOME"] + "/orphan.pid", "w") as file:
                file.write(str(manager.provisioner.pid))
            os._exit(0)
        os.waitpid(parent, 0)
        with open(os.environ["HOME"] + "/orphan.pid") as file:
            pid = int(file.read())
        for _ in range(600):
            try:
                with open(f"/proc/{pid}/stat") as stat:
                    if stat.read().split(")")[1].split()[0] == "Z":
                        return
            except FileNotFoundError:
                return
            time.sleep(0.1)
        os.kill(pid, 9)
        self.fail("the orphan lives on")


if __name__ == "__main__":
    unittest.main()
