package headrace.report;

import headrace.data.inquiry.Inquiry;
import headrace.report.Block.TextBlock;
import headrace.units.Numbers;
import java.util.ArrayList;
import java.util.List;

/** How an inquiry shows itself: what was told, and what was assumed. */
final class InquiryReport {
    private InquiryReport() {}

    static Shown of(Inquiry inquiry) {
        Composed composed = Composed.titled("Inquiry: " + inquiry)
                .line("As written: " + inquiry.text().strip().replaceAll("\\s+", " "))
                .fact("flow", inquiry.flow())
                .fact("flow of one pump", inquiry.flowOfOne())
                .fact("head", inquiry.head())
                .fact("liquid", inquiry.liquid())
                .fact("duty pumps", inquiry.pumps().duty())
                .fact("standby pumps", inquiry.pumps().standby())
                .fact("heat load", inquiry.heat().load())
                .fact("temperature difference", inquiry.heat().difference());
        if (!inquiry.supply().unknown()) {
            composed.fact("supply", supply(inquiry.supply()));
        }
        Shown shown = composed.shown(inquiry.notes());
        List<Block> blocks = new ArrayList<>(shown.blocks());
        if (!inquiry.assumptions().isEmpty()) {
            List<String> lines =
                    inquiry.assumptions().stream().map(PlainReports::capital).toList();
            blocks.add(1, new TextBlock("Assumed", lines));
        }
        return new Shown(shown.title(), shown.lines(), blocks);
    }

    private static String supply(Inquiry.Supply supply) {
        List<String> parts = new ArrayList<>();
        supply.volts().ifPresent(volts -> parts.add(Numbers.print(volts) + " V"));
        supply.phases().ifPresent(phases -> parts.add(phases + " phase" + (phases == 1 ? "" : "s")));
        supply.frequency().ifPresent(frequency -> parts.add(frequency.toString()));
        return String.join(", ", parts);
    }
}
