package headrace.report;

import headrace.chart.Chart;
import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolution;
import headrace.circuit.SystemCurve;
import headrace.circuit.answer.CircuitSurvey;
import headrace.circuit.answer.HeadMargin;
import headrace.circuit.answer.HeadNeed;
import headrace.circuit.answer.HeadProfile;
import headrace.circuit.answer.ProportionalBalance;
import headrace.circuit.band.HeadBand;
import headrace.circuit.part.Part;
import headrace.circuit.part.coil.CoilHeat;
import headrace.circuit.part.coil.EmissionLaw;
import headrace.circuit.part.valve.Authority;
import headrace.circuit.part.valve.InstalledCharacteristic;
import headrace.circuit.shape.Tap;
import headrace.commission.CommissioningSheet;
import headrace.commission.SiteVerdict;
import headrace.control.BandWithLaws;
import headrace.control.ControlLaw;
import headrace.control.LoopOperation;
import headrace.control.SteadyState;
import headrace.control.duty.DutyPlan;
import headrace.control.duty.DutyRecord;
import headrace.control.duty.Fault;
import headrace.control.staging.StagedRun;
import headrace.control.staging.Staging;
import headrace.curve.CurvePoint;
import headrace.curve.Droop;
import headrace.curve.Duty;
import headrace.curve.ImpellerSizing;
import headrace.curve.NpshCurve;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.curve.SpeedCollapse;
import headrace.curve.TrimComparison;
import headrace.data.Table;
import headrace.data.inquiry.Inquiry;
import headrace.drive.Drive;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.economics.Appraisal;
import headrace.economics.Carbon;
import headrace.economics.CashFlow;
import headrace.economics.CostItem;
import headrace.economics.InternalRates;
import headrace.economics.LawAppraisals;
import headrace.economics.LifeCycleComparison;
import headrace.economics.LifeCycleCost;
import headrace.economics.Realisation;
import headrace.economics.study.PaybackRange;
import headrace.economics.tariff.Bill;
import headrace.economics.tariff.EnergyRate;
import headrace.economics.tariff.PowerSeries;
import headrace.economics.tariff.Tariff;
import headrace.energy.EstimatedYear;
import headrace.energy.LawYear;
import headrace.energy.LoadProfile;
import headrace.energy.PowerSaving;
import headrace.energy.RegionHours;
import headrace.energy.StrategyComparison;
import headrace.energy.YearSaving;
import headrace.energy.load.BranchYear;
import headrace.energy.load.HourlyLoad;
import headrace.energy.load.HourlyWeather;
import headrace.energy.load.LoadPattern;
import headrace.energy.load.LoadToFlow;
import headrace.energy.year.CircuitYear;
import headrace.energy.year.LawHours;
import headrace.estimate.ErrorBudget;
import headrace.estimate.FlowDraws;
import headrace.estimate.FlowEstimate;
import headrace.estimate.FlowEstimator;
import headrace.estimate.PowerMap;
import headrace.estimate.Reading;
import headrace.estimate.UncertaintyMap;
import headrace.estimate.site.AgainstTruth;
import headrace.estimate.site.Calibration;
import headrace.lesson.Check;
import headrace.lesson.Exercise;
import headrace.liquid.Liquid;
import headrace.operation.OperatingPoint;
import headrace.operation.ParallelOperation;
import headrace.operation.SeriesOperation;
import headrace.operation.limit.DeadHead;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.limit.PumpLimits;
import headrace.operation.suction.Filling;
import headrace.operation.suction.NpshCheck;
import headrace.operation.suction.NpshOverReach;
import headrace.operation.suction.SuctionSide;
import headrace.operation.suction.WorkingPressure;
import headrace.pump.PumpBranch;
import headrace.pump.PumpSet;
import headrace.report.circuit.AnswerReports;
import headrace.report.circuit.BandReport;
import headrace.report.circuit.BranchReports;
import headrace.report.circuit.CircuitReports;
import headrace.report.circuit.PartReports;
import headrace.report.circuit.PatternReports;
import headrace.report.lesson.LessonReports;
import headrace.report.money.AppraisalReports;
import headrace.report.money.CostReports;
import headrace.report.money.RangeReport;
import headrace.report.plant.DutyReports;
import headrace.report.plant.ShortlistReport;
import headrace.report.plant.StagingReports;
import headrace.report.run.RunRecord;
import headrace.report.run.RunReports;
import headrace.report.sheet.Sheet;
import headrace.report.sheet.SheetReport;
import headrace.rule.LargestMinimumHead;
import headrace.rule.PartLoadRule;
import headrace.rule.RuleVerdict;
import headrace.rule.index.CirculatorEnergyIndex;
import headrace.rule.index.MinimumEfficiencyIndex;
import headrace.rule.index.PumpEnergyIndex;
import headrace.rule.window.MinimumHeadWindow;
import headrace.selection.Shortlist;
import headrace.trend.Drift;
import headrace.trend.FaultTable;
import headrace.trend.LoggedLoad;
import headrace.trend.MapCheck;
import headrace.trend.MeasuredSaving;
import headrace.trend.OutdoorYear;
import headrace.trend.PowerBaseline;
import headrace.trend.TrendLog;
import headrace.trend.YearLoad;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * How each main object of a script shows itself. What is not among them shows itself by its own text; a record of ours
 * without one by its parts.
 */
public final class Reports {
    private static final List<Report<?>> ALL = List.of(
            new Report<>(Shown.class, shown -> shown),
            new Report<>(Table.class, PlainReports::table),
            new Report<>(RunRecord.class, RunReports::of),
            new Report<>(Exercise.class, LessonReports::exercise),
            new Report<>(Check.class, LessonReports::check),
            new Report<>(Chart.class, PlainReports::chart),
            new Report<>(Liquid.class, PlainReports::liquid),
            new Report<>(Inquiry.class, InquiryReport::of),
            new Report<>(LoadProfile.class, LoadProfileReport::of),
            new Report<>(HourlyLoad.class, YearReports::load),
            new Report<>(HourlyWeather.class, YearReports::weather),
            new Report<>(LoadToFlow.class, YearReports::way),
            new Report<>(EmissionLaw.class, law -> YearReports.way(LoadToFlow.emission(law))),
            new Report<>(BranchYear.class, YearReports::branches),
            new Report<>(PowerSaving.class, saving -> ListReports.powerSavings(List.of(saving))),
            new Report<>(YearSaving.class, saving -> ListReports.yearSavings(List.of(saving))),
            new Report<>(ImpellerSizing.Sized.class, way -> CurveChoiceReports.sized(List.of(way))),
            new Report<>(Duty.class, SmallReports::duty),
            new Report<>(Reading.class, SmallReports::reading),
            new Report<>(OperatingRegion.class, SmallReports::region),
            new Report<>(PowerMap.class, SmallReports::map),
            new Report<>(OutdoorYear.class, SmallReports::outdoor),
            new Report<>(Part.class, PartReports::part),
            new Report<>(Tap.class, BranchReports::tap),
            new Report<>(Branch.class, BranchReports::branch),
            new Report<>(CoilHeat.class, PartReports::heat),
            new Report<>(Authority.class, PartReports::authority),
            new Report<>(LoadPattern.class, PatternReports::pattern),
            new Report<>(Fault.class, fault -> DutyReports.faults(List.of(fault))),
            new Report<>(CostItem.class, CostReports::item),
            new Report<>(EnergyRate.class, CostReports::rate),
            new Report<>(Realisation.class, AppraisalReports::realisation),
            new Report<>(CurvePoint.class, PlainReports::curvePoint),
            new Report<>(Droop.class, PlainReports::droop),
            new Report<>(PumpTest.class, PumpTestReport::of),
            new Report<>(PumpCurve.class, PumpCurveReport::of),
            new Report<>(SpeedMap.class, SpeedMapReport::of),
            new Report<>(TrimComparison.class, CurveChoiceReports::trims),
            new Report<>(SpeedCollapse.class, CurveChoiceReports::speeds),
            new Report<>(Motor.class, SetReports::motor),
            new Report<>(Drive.class, LossReports::drive),
            new Report<>(LossModel.class, LossReports::model),
            new Report<>(PumpSet.class, SetReports::pumpSet),
            new Report<>(SystemCurve.class, SetReports::systemCurve),
            new Report<>(ControlLaw.class, SetReports::controlLaw),
            new Report<>(OperatingPoint.class, SetReports::operatingPoint),
            new Report<>(SteadyState.class, SetReports::steadyState),
            new Report<>(LoopOperation.class, LoopReports::operation),
            new Report<>(PumpLimits.class, LimitReports::limits),
            new Report<>(DeadHead.class, LimitReports::deadHead),
            new Report<>(TrendLog.class, TrendReports::log),
            new Report<>(LoggedLoad.class, TrendReports::load),
            new Report<>(YearLoad.class, TrendReports::year),
            new Report<>(PowerBaseline.class, TrendReports::baseline),
            new Report<>(MeasuredSaving.class, TrendReports::saving),
            new Report<>(MapCheck.class, ResidualReports::check),
            new Report<>(Drift.class, ResidualReports::drift),
            new Report<>(FaultTable.class, ResidualReports::faults),
            new Report<>(RegionHours.class, LimitReports::hours),
            new Report<>(SuctionSide.class, SuctionReports::suction),
            new Report<>(NpshCurve.class, SuctionReports::npshCurve),
            new Report<>(NpshCheck.class, SuctionReports::check),
            new Report<>(NpshOverReach.class, SuctionReports::overReach),
            new Report<>(Filling.class, SuctionReports::filling),
            new Report<>(WorkingPressure.class, SuctionReports::workingPressure),
            new Report<>(PumpBranch.class, ParallelReports::branch),
            new Report<>(ParallelOperation.class, ParallelReports::parallel),
            new Report<>(SeriesOperation.class, ParallelReports::series),
            new Report<>(Circuit.class, CircuitReports::circuit),
            new Report<>(CircuitSolution.class, CircuitReports::solution),
            new Report<>(InstalledCharacteristic.class, CircuitReports::installed),
            new Report<>(CircuitSurvey.class, AnswerReports::survey),
            new Report<>(HeadNeed.class, AnswerReports::need),
            new Report<>(HeadMargin.class, AnswerReports::margin),
            new Report<>(ProportionalBalance.class, AnswerReports::balance),
            new Report<>(HeadProfile.class, AnswerReports::profile),
            new Report<>(HeadBand.class, BandReport::band),
            new Report<>(BandWithLaws.class, BandReport::laws),
            new Report<>(LawYear.class, LawYearReports::of),
            new Report<>(StrategyComparison.class, ComparisonReport::of),
            new Report<>(CircuitYear.class, YearReport::of),
            new Report<>(LawHours.class, YearReport::of),
            new Report<>(FlowEstimator.class, EstimateReports::estimator),
            new Report<>(ErrorBudget.class, EstimateReports::errors),
            new Report<>(FlowEstimate.class, EstimateReports::estimate),
            new Report<>(FlowDraws.class, EstimateReports::draws),
            new Report<>(UncertaintyMap.class, EstimateReports::map),
            new Report<>(AgainstTruth.class, EstimateReports::swept),
            new Report<>(Calibration.class, EstimateReports::calibration),
            new Report<>(CommissioningSheet.class, CommissionReports::sheet),
            new Report<>(SiteVerdict.class, CommissionReports::verdict),
            new Report<>(EstimatedYear.class, EstimatedYearReport::of),
            new Report<>(Appraisal.class, AppraisalReports::appraisal),
            new Report<>(LawAppraisals.class, AppraisalReports::laws),
            new Report<>(CashFlow.class, AppraisalReports::flow),
            new Report<>(InternalRates.class, AppraisalReports::rates),
            new Report<>(Carbon.class, AppraisalReports::carbon),
            new Report<>(LifeCycleCost.class, CostReports::lifeCycle),
            new Report<>(LifeCycleComparison.class, CostReports::comparison),
            new Report<>(Tariff.class, CostReports::tariff),
            new Report<>(PowerSeries.class, CostReports::powers),
            new Report<>(Bill.class, CostReports::bill),
            new Report<>(PaybackRange.class, RangeReport::of),
            new Report<>(Shortlist.class, ShortlistReport::of),
            new Report<>(Sheet.class, SheetReport::of),
            new Report<>(Staging.class, StagingReports::staging),
            new Report<>(StagedRun.class, StagingReports::run),
            new Report<>(DutyPlan.class, DutyReports::plan),
            new Report<>(DutyRecord.class, DutyReports::record),
            new Report<>(PartLoadRule.class, RuleReports::rule),
            new Report<>(RuleVerdict.class, RuleReports::verdict),
            new Report<>(LargestMinimumHead.class, RuleReports::largestMinimumHead),
            new Report<>(MinimumHeadWindow.class, WindowReport::of),
            new Report<>(MinimumEfficiencyIndex.class, IndexReports::minimumEfficiency),
            new Report<>(CirculatorEnergyIndex.class, IndexReports::circulator),
            new Report<>(PumpEnergyIndex.class, IndexReports::pumpEnergy));

    private record Report<T>(Class<T> type, Function<T, Shown> shown) {
        Optional<Shown> of(Object object) {
            return type.isInstance(object) ? Optional.of(shown.apply(type.cast(object))) : Optional.empty();
        }
    }

    private Reports() {}

    /** Returns whether every object of a type has a report of its own. */
    public static boolean has(Class<?> type) {
        return ALL.stream().anyMatch(report -> report.type().isAssignableFrom(type));
    }

    /** Returns what an optional value or an array of objects holds, which is what there is to show; else the value. */
    public static Object opened(Object value) {
        if (value instanceof Optional<?> optional) {
            return opened(optional.orElse(null));
        }
        return value instanceof Object[] array ? Arrays.asList(array) : value;
    }

    /**
     * Returns how an object, or a list of results of one kind, shows itself, or nothing if it has no other way than its
     * own text.
     */
    public static Optional<Shown> of(Object object) {
        return ALL.stream()
                .flatMap(report -> report.of(object).stream())
                .findFirst()
                .or(() -> ListReports.of(object))
                .or(() -> RecordReports.of(object));
    }
}
