/** Types that appear in signatures of the library, for callers who keep such a value in a variable of their own. */
export type { Frame, Vec3 } from '../assembly/frame.js';
export type {
  AssembledPart,
  AssembledPlate,
  AssembledSheet,
  Assembly,
  Copy,
  Fastener,
  FastenerItem,
  JointKind,
  Passage,
} from '../assembly/types.js';
export type { Answered, AxesAnswer, MaterialAnswer } from '../coupon/answer.js';
export type { Readings, ReadingsRead, TabsHeld } from '../coupon/measured-file.js';
export type { Estimate, Measured, Solved } from '../coupon/solve.js';
export type { Coupon, CouponCut, Measure, Reading } from '../coupon/types.js';
export type { Filled, Material, StockItem } from '../design/design.js';
export type { ShapeSource } from '../design/dish-shape.js';
export type { About as AboutKey, KeyMeta, Range as KeyRange } from '../design/keys.js';
export type { FilledMachine } from '../design/machine.js';
export type { ProfileSource } from '../design/profile-of.js';
export type { DesignReading } from '../design/read.js';
export type { DesignFile } from '../design/schema.js';
export type { MaterialKind } from '../design/sections/materials.js';
export type { FilledLoad, FilledVessel, LoadFile, VesselFile } from '../design/vessel-sizes.js';
export type { Profile } from '../dish/profile.js';
export type { PlanFrame, RibLayout } from '../dish/rib-layout.js';
export type { DishShape, Figure as DishFigure } from '../dish/types.js';
export type { Axes } from '../geometry/axes.js';
export type { LaserCut, LaserPlan } from '../machining/laser/types.js';
export type { RouterMachine } from '../machining/router/machine.js';
export type {
  Cut,
  CuttingRange,
  Holding,
  Move,
  Point3,
  RouterLimits,
  RouterPlan,
  RouterProblem,
  RouterTool,
  ToolPath,
  ToolRun,
  ToolWear,
} from '../machining/router/types.js';
export type { Corrections, CutOperation, CutSheet, Process, Unreached } from '../machining/types.js';
export type { FigureAdvice, FocalAdvice, VesselAdvice, RibAdvice } from '../optics/advice.js';
export type { BeamBox, BeamMap } from '../optics/burn/beam-map.js';
export type { BurnPicture, BurnResult, BurnState, Harmless } from '../optics/burn/burn.js';
export type { Cooling } from '../optics/compare/cooling.js';
export type { SlopeFinding } from '../optics/compare/inverse.js';
export type { Reading as LogReading, Run as LogRun } from '../optics/compare/log.js';
export type { WidthFinding } from '../optics/compare/spot-widths.js';
export type { CookingPoint, CookingTest } from '../optics/compare/standard-test.js';
export type { CookingPower } from '../optics/cooking-power.js';
export type { Aim, AimDirection } from '../optics/aim.js';
export type { Hanging, Defocus } from '../optics/hanging.js';
export type { Body } from '../optics/heat.js';
export type { Heat, HotSpot, Warming } from '../optics/heat-forecast.js';
export type { SurfaceLight } from '../optics/losses.js';
export type { Surface } from '../optics/solid.js';
export type { DayForecast, HeatDay, HeatHour, HourRow, LightLedger, MonthRow } from '../optics/day-forecast.js';
export type { HeatLedger } from '../optics/warming.js';
export type { SunHeight, VesselForecast } from '../optics/vessel-forecast.js';
export type { SurfaceMap, VesselMap } from '../optics/vessel-map.js';
export type { Slip, SlipKey } from '../optics/workmanship.js';
export type { CutPicture, CutTool, ForecastRow } from '../output/book/input.js';
export type { Caution } from '../output/cautions.js';
export type { JobRecord } from '../output/job.js';
export type { ForecastPlot } from '../output/plots/plot.js';
export type { Colours, CutSheetToDraw, PartToDraw } from '../output/types.js';
export type {
  SourceDrawing as ExtraDrawing,
  DrawingMessage as ExtraFinding,
  ReadingOptions as ExtraReadingOptions,
  SourceRun as ExtraRun,
} from '../parts/extra/drawing.js';
export type {
  EdgeHole,
  EdgeRole,
  EdgeRun,
  Face,
  Grain,
  Hole,
  LaidSheet,
  LineMark,
  Mark,
  Offcut,
  Operation,
  PartKind,
  PartShape,
  Pocket,
  PlacedPart,
  SeatCorner,
  TextMark,
} from '../part/types.js';
export type { Forecasting } from '../pipeline/forecast.js';
export type { NestRequest } from '../pipeline/nesting-request.js';
export type { JobFiles, LaserRoute, Route } from '../pipeline/types.js';
export type { AxisChoice } from '../stand/axis-place.js';
export type { StandValues, Stand } from '../stand/make.js';
export type { Linkage } from '../stand/linkage.js';
export type { Motion } from '../stand/pose.js';
export type { Counterweights } from '../stand/balance.js';
export type { Cradle } from '../stand/cradle.js';
export type { Deflection, Giving } from '../stand/deflection.js';
export type { Holder } from '../stand/holder.js';
export type { Mass } from '../stand/masses.js';
export type { Collision, Prism } from '../stand/motion.js';
export type { FilledStand, StandFile } from '../design/stand-sizes.js';
export type { Pipe } from '../hardware/pipes.js';
export type { CheckLine } from '../units/printed.js';
export type { Size } from '../units/size.js';
export type { UsualRange } from '../units/usual.js';
export type { CleatStart } from '../parts/plan.js';
export type { SplicePlace } from '../parts/splices.js';
