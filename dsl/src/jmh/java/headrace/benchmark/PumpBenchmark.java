package headrace.benchmark;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The workloads under JMH, warm: for looking into one of them, with its profilers. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 1)
@Fork(1)
@State(Scope.Benchmark)
public class PumpBenchmark {
    /** The name of a workload. */
    @Param({
        "W1", "W2", "W3a", "W3b", "W3c", "W4a", "W4b", "W5a", "W5b", "W5c", "W5y", "W6a", "W6b", "W7a", "W7b", "W7c", "W7r", "W8",
        "W8r", "W9", "W10"
    })
    public String workload;

    private Workload work;

    /** Makes the inputs. */
    @Setup
    public void makeInputs() {
        work = Timing.ALL.get(workload).get();
    }

    /** Does the work once. */
    @Benchmark
    public Workload work() {
        work.call();
        return work;
    }
}
