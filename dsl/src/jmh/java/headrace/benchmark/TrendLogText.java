package headrace.benchmark;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;

/**
 * Writes the trend log of W9: an invented building with a weekly and a yearly load, noise, gaps, a stuck flow meter,
 * repeated rows, empty cells, impossible values, and an impeller that wears from minute 700,000 on.
 */
final class TrendLogText {
    private static final int ROWS = 1_000_000;
    private static final int BLOCK = 720;
    private static final int WORN_FROM = 700_000;
    private static final double[] DAY = {
        .30, .30, .30, .30, .35, .50, .80, 1.00, .95, .90, .88, .85, .82, .80, .80, .82, .86, .90, .80, .68, .56, .46, .38,
        .33
    };
    private static final double[] SEASON = {1.00, .95, .85, .70, .55, .45, .40, .42, .55, .70, .85, .95};
    private static final LocalDateTime START = LocalDateTime.of(2024, 1, 1, 0, 0);

    private final StringBuilder text = new StringBuilder(128);

    private TrendLogText() {}

    static void write(Path file) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
            out.write("timestamp,kW,rpm,m3/h,m\n".getBytes(StandardCharsets.US_ASCII));
            TrendLogText rows = new TrendLogText();
            int written = 0;
            for (long minute = 0; written < ROWS; minute++) {
                int times = missing(minute) ? 0 : divides(Inputs.bits(902, minute), 1000) ? 2 : 1;
                byte[] row = times == 0 ? null : rows.row(minute).getBytes(StandardCharsets.US_ASCII);
                for (int i = 0; i < times && written < ROWS; i++, written++) {
                    out.write(row);
                }
            }
        }
    }

    private static boolean divides(long bits, long by) {
        return Long.remainderUnsigned(bits, by) == 0;
    }

    private static boolean missing(long minute) {
        long bits = Inputs.bits(901, minute / BLOCK);
        return divides(bits, 40) && within(minute, bits, 500, 20 + Long.remainderUnsigned(bits >>> 20, 200));
    }

    private static boolean within(long minute, long bits, long latest, long length) {
        long from = Long.remainderUnsigned(bits >>> 8, latest);
        long at = minute % BLOCK;
        return at >= from && at < from + length;
    }

    /** Returns the minute whose flow is shown: while the meter is stuck that of its first such minute. */
    private static long flowMinute(long minute) {
        long block = minute / BLOCK;
        long bits = Inputs.bits(904, block);
        boolean stuck = divides(bits, 60) && within(minute, bits, 400, 60 + Long.remainderUnsigned(bits >>> 20, 240));
        return stuck ? BLOCK * block + Long.remainderUnsigned(bits >>> 8, 400) : minute;
    }

    private static double load(long minute) {
        long day = minute / 1440;
        int hour = (int) (minute % 1440 / 60);
        double past = minute % 60 / 60.0;
        double shape = DAY[hour] + (DAY[(hour + 1) % 24] - DAY[hour]) * past;
        double week = day % 7 < 5 ? 1.0 : 0.70;
        double load = ((SEASON[(int) (day % 365 / 31)] * shape) * week) * (0.8 + 0.4 * Inputs.uniform(907, minute / 15));
        return Math.min(Math.max(load, 0.12), 1.0);
    }

    private static double noise(long seed, long minute) {
        long bits = Inputs.bits(seed, minute);
        double[] parts = new double[4];
        for (int k = 0; k < 4; k++) {
            parts[k] = ((bits >>> 16 * k & 65_535) + 0.5) / 65_536.0;
        }
        return (((parts[0] + parts[1]) + (parts[2] + parts[3])) - 2.0) * 1.7320508075688772;
    }

    private static long flow(long minute) {
        return digits(80.0 * load(minute) * (1.0 + 0.015 * noise(912, minute)) * 100.0);
    }

    private static long digits(double value) {
        return (long) Math.floor(value + 0.5);
    }

    private String row(long minute) {
        double load = load(minute);
        double q = 80.0 * load;
        double head = 8.0 + (14.0 * load) * load;
        double wear = minute < WORN_FROM ? 1.0 : 1.0 - 0.08 * ((minute - WORN_FROM) / 400_000.0);
        double[] h = Inputs.HEAD;
        double[] p = Inputs.KILOWATTS;
        double b = (0.5 * h[1]) * q;
        double c = (h[2] * q) * q - head / wear;
        double s = (Math.sqrt(b * b - h[0] * c) - b) / h[0];
        double shaft = ((p[0] * s) * s) * s + ((p[1] * q) * s) * s + ((p[2] * q) * q) * s;
        boolean off = divides(Inputs.bits(905, minute), 2000);
        long watts = off ? -1000 : digits((0.25 + 1.08 * shaft) * (1.0 + 0.010 * noise(911, minute)) * 1000.0);
        long rpm = digits((1450.0 * s + (2.0 * Inputs.uniform(914, minute) - 1.0) * 0.5) * 10.0);
        boolean high = divides(Inputs.bits(906, minute), 3000);
        long metres = high ? 99_999 : digits(head * (1.0 + 0.008 * noise(913, minute)) * 1000.0);
        long empty = Inputs.bits(903, minute);
        int cell = divides(empty, 500) ? (int) (empty >>> 16 & 3) : -1;
        text.setLength(0);
        String time = START.plusMinutes(minute).toString();
        text.append(time, 0, 16).append(":00Z");
        cell(watts, 3, cell == 0);
        cell(rpm, 1, cell == 1);
        cell(flow(flowMinute(minute)), 2, cell == 2);
        cell(metres, 3, cell == 3);
        return text.append('\n').toString();
    }

    private void cell(long value, int places, boolean empty) {
        text.append(',');
        if (empty) {
            return;
        }
        String plain = Long.toString(Math.abs(value));
        plain = "0".repeat(Math.max(0, places + 1 - plain.length())) + plain;
        int point = plain.length() - places;
        text.append(value < 0 ? "-" : "").append(plain, 0, point).append('.').append(plain, point, plain.length());
    }
}
