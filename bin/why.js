import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import { z } from "zod";
// ../../work/w/calls/server/domain/channels/tables/its90.ts
/** Letters of IEC 60584-1. */
var thermocoupleLetters = [
	"B",
	"E",
	"J",
	"K",
	"N",
	"R",
	"S",
	"T"
];
/** ITS-90 reference functions: NIST ITS-90 Thermocouple Database, SRD 60 (Monograph 175), file allcoeff.tab. */
var referenceFunctions = {
	B: [{
		fromC: 0,
		toC: 630.615,
		coefficients: [
			0,
			-.00024650818346,
			59040421171e-16,
			-1.3257931636e-9,
			15668291901e-22,
			-1694452924e-24,
			62990347094e-29
		]
	}, {
		fromC: 630.615,
		toC: 1820,
		coefficients: [
			-3.8938168621,
			.02857174747,
			-84885104785e-15,
			1.5785280164e-7,
			-16835344864e-20,
			11109794013e-23,
			-44515431033e-27,
			98975640821e-31,
			-93791330289e-35
		]
	}],
	E: [{
		fromC: -270,
		toC: 0,
		coefficients: [
			0,
			.058665508708,
			45410977124e-15,
			-7.7998048686e-7,
			-2.5800160843e-8,
			-59452583057e-20,
			-93214058667e-22,
			-10287605534e-23,
			-80370123621e-26,
			-43979497391e-28,
			-16414776355e-30,
			-39673619516e-33,
			-55827328721e-36,
			-34657842013e-39
		]
	}, {
		fromC: 0,
		toC: 1e3,
		coefficients: [
			0,
			.05866550871,
			45032275582e-15,
			2.8908407212e-8,
			-33056896652e-20,
			6502440327e-22,
			-19197495504e-26,
			-12536600497e-28,
			21489217569e-31,
			-14388041782e-34,
			35960899481e-38
		]
	}],
	J: [{
		fromC: -210,
		toC: 760,
		coefficients: [
			0,
			.050381187815,
			3047583693e-14,
			-8.568106572e-8,
			13228195295e-20,
			-17052958337e-23,
			20948090697e-26,
			-12538395336e-29,
			15631725697e-33
		]
	}, {
		fromC: 760,
		toC: 1200,
		coefficients: [
			296.45625681,
			-1.4976127786,
			.0031787103924,
			-31847686701e-16,
			1.5720819004e-9,
			-30691369056e-23
		]
	}],
	K: [{
		fromC: -270,
		toC: 0,
		coefficients: [
			0,
			.039450128025,
			23622373598e-15,
			-3.2858906784e-7,
			-4.9904828777e-9,
			-67509059173e-21,
			-57410327428e-23,
			-31088872894e-25,
			-10451609365e-27,
			-19889266878e-30,
			-16322697486e-33
		]
	}, {
		fromC: 0,
		toC: 1372,
		coefficients: [
			-.017600413686,
			.038921204975,
			18558770032e-15,
			-9.9457592874e-8,
			31840945719e-20,
			-56072844889e-23,
			56075059059e-26,
			-32020720003e-29,
			97151147152e-33,
			-12104721275e-36
		]
	}],
	N: [{
		fromC: -270,
		toC: 0,
		coefficients: [
			0,
			.026159105962,
			10957484228e-15,
			-9.3841111554e-8,
			-46412039759e-21,
			-26303357716e-22,
			-22653438003e-24,
			-76089300791e-27,
			-93419667835e-30
		]
	}, {
		fromC: 0,
		toC: 1300,
		coefficients: [
			0,
			.025929394601,
			1571014188e-14,
			4.3825627237e-8,
			-25261169794e-20,
			64311819339e-23,
			-10063471519e-25,
			99745338992e-29,
			-60863245607e-32,
			20849229339e-35,
			-30682196151e-39
		]
	}],
	R: [
		{
			fromC: -50,
			toC: 1064.18,
			coefficients: [
				0,
				.00528961729765,
				139166589782e-16,
				-2.38855693017e-8,
				356916001063e-22,
				-462347666298e-25,
				500777441034e-28,
				-373105886191e-31,
				157716482367e-34,
				-281038625251e-38
			]
		},
		{
			fromC: 1064.18,
			toC: 1664.5,
			coefficients: [
				2.95157925316,
				-.00252061251332,
				159564501865e-16,
				-7.64085947576e-9,
				205305291024e-23,
				-293359668173e-27
			]
		},
		{
			fromC: 1664.5,
			toC: 1768.1,
			coefficients: [
				152.232118209,
				-.268819888545,
				.000171280280471,
				-3.45895706453e-8,
				-934633971046e-26
			]
		}
	],
	S: [
		{
			fromC: -50,
			toC: 1064.18,
			coefficients: [
				0,
				.00540313308631,
				12593428974e-15,
				-2.32477968689e-8,
				322028823036e-22,
				-331465196389e-25,
				255744251786e-28,
				-125068871393e-31,
				271443176145e-35
			]
		},
		{
			fromC: 1064.18,
			toC: 1664.5,
			coefficients: [
				1.32900444085,
				.00334509311344,
				654805192818e-17,
				-1.64856259209e-9,
				129989605174e-25
			]
		},
		{
			fromC: 1664.5,
			toC: 1768.1,
			coefficients: [
				146.628232636,
				-.258430516752,
				.000163693574641,
				-3.30439046987e-8,
				-943223690612e-26
			]
		}
	],
	T: [{
		fromC: -270,
		toC: 0,
		coefficients: [
			0,
			.038748106364,
			44194434347e-15,
			1.1844323105e-7,
			2.0032973554e-8,
			90138019559e-20,
			22651156593e-21,
			36071154205e-23,
			38493939883e-25,
			28213521925e-27,
			14251594779e-29,
			48768662286e-32,
			1079553927e-33,
			13945027062e-37,
			79795153927e-41
		]
	}, {
		fromC: 0,
		toC: 400,
		coefficients: [
			0,
			.038748106364,
			3329222788e-14,
			2.0618243404e-7,
			-2.1882256846e-9,
			10996880928e-21,
			-30815758772e-24,
			4547913529e-26,
			-27512901673e-30
		]
	}]
};
/** Type K above 0 °C has a further term, amplitude × exp(rate × (t - centre)²), mV (same source). */
var kExponential = {
	amplitudeMv: .1185976,
	ratePerK2: -.0001183432,
	centreC: 126.9686
};
// ../../work/w/calls/server/domain/channels/kind.ts
var sensors = [
	...thermocoupleLetters,
	"pt100",
	"ntc",
	"ds18b20",
	"hx711",
	"co",
	"other"
];
var converters = [
	"max31855",
	"max6675",
	"max31856",
	"ads1115",
	"ads1220",
	"none"
];
/** What is taken for granted of a channel that no birth document describes (wire format: units from the pack, already linearised). */
var plainKind = (unit) => ({
	unit,
	sensor: "other",
	converter: "none",
	linearised: true
});
var isThermocouple = (sensor) => thermocoupleLetters.includes(sensor);
// ../../work/w/calls/server/domain/channels/accuracy.ts
/** Where nothing is told: the usual and worst of the usual. */
var usualProbe = {
	sensor: "K",
	converter: "max31855",
	linearised: false
};
/** What a bath of ice or boiling water leaves open (instrument facts 3.1 and 3.2: 0.1 K and the weather). */
var bathK = .5;
/** A calibration in water says nothing beyond (instrument facts 3.3). */
var bathReachC = 150;
/** Left after the exact inverse (instrument facts 2.10). */
var residualK = .1;
/**
* How far the value may be off, K: the error budget of instrument facts 2.10 (class 2 sensor, converter, cold junction, rest: independent,
* root of the sum of squares) with the scatter of the reading itself.
*/
function valueError(probe, valueC, calibrated, scatterK) {
	const { sensor: name, converter, linearised } = probe ?? usualProbe;
	const sensor = sensors.find((known) => known === name) ?? "other";
	const systematic = calibrated && valueC <= bathReachC ? [bathK] : [sensorK(sensor, valueC), ...converterK(sensor, converter, linearised, valueC)];
	return Math.sqrt([
		...systematic,
		residualK,
		scatterK
	].reduce((sum, part) => sum + part * part, 0));
}
/** Tolerance of a new sensor, K (instrument facts 1.4, class 2; 2.5; 2.7, class B). */
function sensorK(sensor, valueC) {
	const away = Math.abs(valueC);
	if (sensor === "ds18b20") return valueC >= -10 && valueC <= 85 ? .5 : 2;
	if (sensor === "pt100") return .3 + .005 * away;
	if (sensor === "ntc") return 1;
	if (sensor === "T") return Math.max(1, .0075 * away);
	if (sensor === "R" || sensor === "S" || sensor === "B") return Math.max(1.5, .0025 * away);
	return Math.max(2.5, .0075 * away);
}
/** Converter and its cold junction, K (instrument facts 2.1 to 2.4). */
function converterK(sensor, converter, linearised, valueC) {
	if (!isThermocouple(sensor)) return [];
	if (converter === "max31856") return [Math.max(.5, .0015 * Math.abs(valueC)), .7];
	const straight = [valueC > 700 ? 4 : 2, 2];
	return linearised && (converter === "max31855" || converter === "max6675") ? [...straight, 3.5] : straight;
}
// ../../work/w/calls/server/domain/channels/calibration.ts
var calibrate = (calibration, value) => calibration === void 0 ? value : calibration.gain * value + calibration.offset;
// ../../work/w/calls/server/domain/channels/robust.ts
/** Middle value; the mean of the two middle ones for an even number. NaN for none. */
function median$1(values) {
	const sorted = Float64Array.from(values).sort();
	const half = sorted.length >> 1;
	const upper = sorted[half] ?? NaN;
	return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? NaN) + upper) / 2;
}
/** Makes the median absolute deviation of a normal distribution its standard deviation. */
var normalMad = 1.4826;
/** Middle and scale of some values; the scale never below `floor` (one step of the converter: on a grid most windows have none, instrument facts 4). */
function robustScale(values, floor) {
	const middle = median$1(values);
	return {
		middle,
		scale: Math.max(normalMad * median$1(values.map((value) => Math.abs(value - middle))), floor)
	};
}
/**
* Theil-Sen line: the median slope of all pairs, through the median of what it leaves (instrument facts 4). The deviation of the slope is that of
* least squares with the robust scatter, for which the median pays about 5 % (from memory). Null with fewer than three different x.
*/
function theilSen(x, y, floor) {
	const slopes = [];
	for (let i = 0; i < x.length; i++) for (let k = i + 1; k < x.length; k++) {
		const run = (x[k] ?? 0) - (x[i] ?? 0);
		if (run !== 0) slopes.push(((y[k] ?? 0) - (y[i] ?? 0)) / run);
	}
	if (x.length < 3 || slopes.length < 2) return null;
	const slope = median$1(slopes);
	const rests = x.map((at, i) => (y[i] ?? 0) - slope * at);
	const intercept = median$1(rests);
	const scatter = Math.max(normalMad * median$1(rests.map((rest) => Math.abs(rest - intercept))), floor);
	const mean = x.reduce((sum, at) => sum + at, 0) / x.length;
	const spread = x.reduce((sum, at) => sum + (at - mean) * (at - mean), 0);
	return {
		slope,
		intercept,
		slopeSd: 1.05 * scatter / Math.sqrt(spread),
		scatter
	};
}
// ../../work/w/calls/server/domain/channels/trend.ts
var partMs = 3e4;
var partsKept = 20;
/** A line through fewer, or over less than three minutes, says more about the noise than about the kiln. */
var fewestParts = 6;
var shortestMs = 18e4;
var hourMs$4 = 36e5;
var noTrend = () => ({
	parts: [],
	open: null,
	line: null
});
/** Takes a value in; times must not go back. A part is closed, and the line drawn anew, by the first value of the next one. */
function feedTrend(trend, t, value, lsb) {
	const slot = Math.floor(t / partMs);
	const { open } = trend;
	if (open !== null && open.slot !== slot) {
		trend.parts.push({
			t: open.sumT / open.count,
			mean: open.sum / open.count,
			count: open.count
		});
		trend.parts = trend.parts.filter((part) => slot * partMs - part.t <= partsKept * partMs).slice(-20);
		trend.line = drawLine(trend, lsb);
		trend.open = null;
	}
	trend.open ??= {
		slot,
		sumT: 0,
		sum: 0,
		count: 0
	};
	trend.open.sumT += t;
	trend.open.sum += value;
	trend.open.count++;
}
function drawLine({ parts }, lsb) {
	const first = parts[0];
	const last = parts.at(-1);
	if (first === void 0 || last === void 0 || parts.length < fewestParts || last.t - first.t < shortestMs) return null;
	const x = parts.map(({ t }) => (t - last.t) / hourMs$4);
	const count = parts.reduce((sum, part) => sum + part.count, 0) / parts.length;
	const line = theilSen(x, parts.map(({ mean }) => mean), lsb / Math.sqrt(12 * count));
	if (line === null) return null;
	const mean = x.reduce((sum, at) => sum + at, 0) / x.length;
	const levelSd = Math.sqrt(line.scatter * line.scatter / x.length + mean * mean * line.slopeSd * line.slopeSd);
	return {
		t: last.t,
		level: line.intercept,
		levelSd,
		slopePerH: line.slope,
		slopeSd: line.slopeSd
	};
}
// ../../work/w/calls/server/domain/channels/track.ts
/**
* Values looked back on, and how many scales off is an outlier. The centred test of the handbook takes 7 and 3; looking back only, on a fire that
* flickers, that turns away a tenth of the good values of the recorded firings. 11 and 5, with a scale no less than the scatter between neighbours,
* turn away one in three hundred and miss 3 of 707 spikes over 40 K.
*/
var lookBack = 11;
var limitScales = 5;
var fewestToJudge = 4;
/** Widens the scatter while a window is young; common practice, no source. */
var youngFactor = 2;
/** After so long a silence the next value is taken as it comes; common practice, no source. */
var forgetMs = 3e5;
var forgetPeriods = 10;
function startTrack(periodS, lsb, probe = null) {
	return {
		periodS,
		lsb,
		probe,
		took: null,
		value: null,
		t: null,
		quality: "good",
		calibrated: false,
		heardMs: null,
		nodeLost: false,
		recent: [],
		doubted: null,
		stepFrom: null,
		scatter: null,
		outliersInRow: 0,
		error: valueError(probe, 0, false, lsb / Math.sqrt(12)),
		trend: noTrend()
	};
}
/** A birth document, or the first pack, told more of the channel. */
function describeTrack(track, periodS, lsb, probe) {
	track.periodS = periodS;
	track.lsb = lsb;
	track.probe = probe ?? track.probe;
	return track;
}
/** The node's will was heard, or the node is back. */
function trackNode(track, is) {
	track.nodeLost = is === "lost";
	return track;
}
/** Takes a sample in. Late ones, and ones older than what was heard, change nothing: they belong to the history. */
function trackSample(track, sample, calibration) {
	track.took = null;
	const { t, late, quality } = sample;
	if (late || track.heardMs !== null && t <= track.heardMs) return track;
	if ((track.heardMs === null ? 0 : t - track.heardMs) > Math.max(forgetMs, forgetPeriods * track.periodS * 1e3)) {
		track.recent = [];
		track.stepFrom = null;
	}
	track.heardMs = t;
	track.nodeLost = false;
	if (sample.value === null || quality.startsWith("fault:")) {
		track.value = null;
		track.quality = quality;
		track.doubted = null;
		return track;
	}
	const value = calibrate(calibration, sample.value);
	track.calibrated = calibration !== void 0 && (calibration.gain !== 1 || calibration.offset !== 0);
	if (isOutlier(track, value)) {
		track.doubted = value;
		track.outliersInRow++;
		if (track.outliersInRow > 1) track.quality = "suspect";
		return track;
	}
	track.outliersInRow = 0;
	track.doubted = null;
	track.took = value;
	track.value = value;
	track.t = t;
	track.quality = quality;
	track.recent.push(value);
	if (track.recent.length > lookBack) track.recent.shift();
	if (track.recent.length >= fewestToJudge) {
		track.stepFrom = null;
		track.scatter = scatterOf(track);
	}
	track.error = valueError(track.probe, value, track.calibrated, track.scatter ?? track.lsb / Math.sqrt(12));
	feedTrend(track.trend, t, value, track.lsb);
	return track;
}
/** Hampel's test looking back. A second value off to the same side that agrees with the first makes it a step: the window starts anew there. */
function isOutlier(track, value) {
	const { recent, scatter, doubted, stepFrom } = track;
	if (stepFrom !== null && Math.abs(value - stepFrom.middle) <= limitScales * stepFrom.scale) {
		track.recent = [];
		return false;
	}
	if (recent.length < (scatter === null ? fewestToJudge : 1)) return false;
	const known = (scatter ?? 0) * (recent.length < fewestToJudge ? youngFactor : 1);
	const { middle, scale } = robustScale(recent, Math.max(known, track.lsb));
	const away = value - middle;
	if (Math.abs(away) <= limitScales * scale) return false;
	if (doubted === null) return true;
	if (!((doubted - middle) * away > 0 && Math.abs(value - doubted) <= Math.max(Math.abs(away) / 4, limitScales * scale))) return true;
	track.stepFrom = {
		middle,
		scale
	};
	track.recent = [doubted];
	return false;
}
/** Wire format, rule 7. */
function heardAt({ heardMs, nodeLost, periodS }, at) {
	if (heardMs === null) return "never";
	const silentS = (at - heardMs) / 1e3;
	if (nodeLost || silentS > Math.max(60, 6 * periodS)) return "lost";
	return silentS > Math.max(15, 3 * periodS) ? "late" : "fresh";
}
/** What stands at a time. Changes nothing. */
function readTrack(track, at) {
	const heard = heardAt(track, at);
	const gone = heard === "lost" || heard === "never";
	const value = gone ? null : track.value;
	const line = !gone && track.trend.line !== null && at - track.trend.line.t <= Math.max(12e4, 6e3 * track.periodS) ? track.trend.line : null;
	return {
		value,
		quality: track.quality,
		t: track.t,
		heard,
		slopePerH: line?.slopePerH ?? null,
		slopeSd: line?.slopeSd ?? null,
		level: line?.level ?? null,
		levelSd: line?.levelSd ?? null,
		error: track.error
	};
}
/** Scatter of single values about their run, from the steps between neighbours so that a slope does not count; at least that of the converter's step. */
function scatterOf({ recent, lsb }) {
	const steps = recent.slice(1).map((value, i) => Math.abs(value - (recent[i] ?? value)));
	return Math.max(1.4826 * median$1(steps) / Math.SQRT2, lsb / Math.sqrt(12));
}
var parts = 64;
var perE = parts / Math.LN2;
var eachPart = Math.LN2 / parts;
/** Octaves to either side that the table holds. */
var octaves = 1022;
var most = 700;
function doubled(times) {
	let power = 1;
	for (let k = 0; k < Math.abs(times); k++) power *= times < 0 ? .5 : 2;
	return power;
}
var partTable = Float64Array.from({ length: parts }, (_, i) => Math.exp(i * eachPart));
var octaveTable = Float64Array.from({ length: 2045 }, (_, i) => doubled(i - octaves));
/** e to the power of `x`; what is beyond ±700 counts as that. */
function exp(x) {
	const held = x > most ? most : x < -700 ? -700 : x;
	const whole = Math.floor(held * perE + .5);
	const r = held - whole * eachPart;
	return (1 + r * (1 + r * (.5 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120)))))) * partTable[whole & 63] * octaveTable[(whole >> 6) + octaves];
}
// ../../work/w/calls/server/domain/kiln/kinetics.ts
var gasConstant = .008314;
var steps$1 = [
	{
		a1: 0x4a9b6384488000,
		e1: 186.7,
		a2: 875e13,
		e2: 202.4,
		a3: 26e10,
		e3: 145.7
	},
	{
		a1: 0x18493fba64ef00000,
		e1: 242.4,
		a2: 328e12,
		e2: 196.5,
		a3: 13e9,
		e3: 150.5
	},
	{
		a1: 96e7,
		e1: 107.6,
		a2: 15e8,
		e2: 143.8,
		a3: 77e5,
		e3: 111.4
	}
];
/** Rate of part 0 hemicellulose, 1 cellulose, 2 lignin, 1/s. */
function breakdownRate(part, celsius) {
	const kelvin = celsius + 273.15;
	const s = steps$1[part];
	const active = s.a1 * Math.exp(-s.e1 / (gasConstant * kelvin));
	const onward = s.a2 * Math.exp(-s.e2 / (gasConstant * kelvin)) + s.a3 * Math.exp(-s.e3 / (gasConstant * kelvin));
	return 1 / (1 / active + 1 / onward);
}
/** Shares of hemicellulose, cellulose and lignin in hardwood (trade facts 9.1, mix used with 9.1.6). */
var partShares = [
	.28,
	.48,
	.24
];
/** What a kilogram of each part becomes: char, water, light acids and alcohols, tar; the rest is gas.
*  Chosen so that the whole wood gives 0.33 char, 0.21 water, 0.11 light organics, 0.13 tar (trade facts 3.1.4, 3.1.5, 3.4.6, 8.9). */
var yields = [
	{
		char: .26,
		water: .24,
		acid: .2,
		tar: .05
	},
	{
		char: .28,
		water: .23,
		acid: .08,
		tar: .19
	},
	{
		char: .52,
		water: .13,
		acid: .05,
		tar: .14
	}
];
/** A zone holds wood at many temperatures: its mean rate rises less steeply than that of one piece. Exponent and pivot: own judgement. */
var blur$1 = .6;
var pivotPerS = 5e-4;
/** Mean rate of a whole zone, 1/s. */
function zoneRate(part, celsius) {
	return pivotPerS * Math.exp(blur$1 * Math.log(breakdownRate(part, celsius) / pivotPerS));
}
/** The zone rates on a grid of 2 K from 120 °C, one row a part: the exponentials are too dear inside the ensemble. */
var rateTable = Float64Array.from({ length: 1050 }, (_, i) => zoneRate(Math.floor(i / 350), 120 + i % 350 * 2));
/** Where in the table a temperature lies: whole and fractional index, held inside. */
function tableIndex(celsius) {
	const i = (celsius - 120) / 2;
	return i < 0 ? -1 : i > 348 ? 348 : i;
}
// ../../work/w/calls/server/domain/kiln/water.ts
/** Pressure the kiln works at, kPa (sea level; the altitude shifts boiling by 0.3 K per 100 m, far below the model's error). */
var airPressureKPa = 101.325;
/** Enthalpy of steam at t °C over liquid water at 0 °C, kJ/kg; linear within 5 kJ/kg from 0 to 100 °C (instrument facts 8.1). */
var steamAtZeroKJ = 2501;
var steamCp = 1.9;
var waterCp = 4.19;
/** Antoine's form in natural logarithms: ln kPa = A - B / (C + t); constants for mmHg and powers of ten 8.07131, 1730.63, 233.426. */
var antoineA = Math.LN10 * 8.07131 + Math.log(.133322368);
var antoineB = Math.LN10 * 1730.63;
var antoineC = 233.426;
/** Saturation pressure of water, kPa, by the Antoine form: within 0.6 % of IF97 from 10 to 100 °C (instrument facts 8.1). */
function saturationKPa$1(celsius) {
	return exp(antoineA - antoineB / (antoineC + celsius));
}
/** Heat that evaporation takes at t °C, kJ/kg. */
function latentKJ(celsius) {
	return steamAtZeroKJ + -2.2900000000000005 * celsius;
}
/** Molar masses 18 and 29 (30 with much CO2). */
var waterOverAir = .622;
/** Water the gas can hold at a vapour pressure, kg per kg of dry gas. */
function humidity(vapourKPa) {
	return waterOverAir * vapourKPa / (airPressureKPa - vapourKPa);
}
// ../../work/w/calls/server/domain/kiln/zone.ts
var solidCp = 1.5;
var gasCp = 1.08;
var organicCp = 1.5;
var perTarSlope = 1 / 22;
var mostVapourKPa = .97 * airPressureKPa;
var leastGone = 1e-12;
var [y0, y1, y2] = yields;
var atGaveWater = 0;
var atGaveAcid = 1;
var atGaveTar = 2;
var atGaveGas = 3;
var atGave = 4;
var atCelsius = 5;
/** Breakdown of one node in place, from `tableFromC` on; what it gave off stands on the bench. False: nothing gave way. */
function breakDown(x, parts, char, m) {
	const i = tableIndex(m[atCelsius]);
	const row = Math.floor(i);
	const part = i - row;
	const seconds = m[6];
	const low0 = rateTable[row];
	const low1 = rateTable[350 + row];
	const low2 = rateTable[700 + row];
	const k0 = (low0 + (rateTable[row + 1] - low0) * part) * seconds;
	const k1 = (low1 + (rateTable[350 + row + 1] - low1) * part) * seconds;
	const k2 = (low2 + (rateTable[700 + row + 1] - low2) * part) * seconds;
	const gone0 = x[parts] * k0 / (1 + k0);
	const gone1 = x[parts + 1] * k1 / (1 + k1);
	const gone2 = x[parts + 2] * k2 / (1 + k2);
	const gone = gone0 + gone1 + gone2;
	if (gone < leastGone) return false;
	const toChar = gone0 * y0.char + gone1 * y1.char + gone2 * y2.char;
	const acid = (gone0 * y0.acid + gone1 * y1.acid + gone2 * y2.acid) * m[7];
	const tar = (gone0 * y0.tar + gone1 * y1.tar + gone2 * y2.tar) * m[8];
	const water = gone0 * y0.water + gone1 * y1.water + gone2 * y2.water;
	x[parts] = x[parts] - gone0;
	x[parts + 1] = x[parts + 1] - gone1;
	x[parts + 2] = x[parts + 2] - gone2;
	x[char] = x[char] + toChar;
	m[atGaveWater] = water;
	m[atGaveAcid] = acid;
	m[atGaveTar] = tar;
	m[atGaveGas] = gone - toChar - water - acid - tar;
	m[atGave] = gone;
	return true;
}
/** One zone of one step; the gas goes over the bench `m` from zone to zone. */
function zone(x, b, z, m, books) {
	const toWood = m[9];
	const toWall = m[10];
	const both = m[11];
	const perBoth = m[12];
	const dt = m[6];
	const perDt = m[13];
	const touch = m[14];
	const toCore = m[19];
	const shift = m[22];
	const heat = m[23];
	const mistShare = m[25];
	const seen = m[27];
	const exchange = m[28];
	const place = m[29];
	let gasC = m[31];
	let dryGas = m[32];
	let steam = m[33];
	let acid = m[34];
	let tar = m[35];
	let mist = m[36];
	let probeWall = m[37];
	let probeWeight = m[38];
	let ts = x[b + 0];
	let tc = x[b + 1];
	const tw = x[b + 14];
	const te = x[b + 15];
	const sp = b + 4;
	const cp = b + 7;
	const solidS = x[sp] + x[sp + 1] + x[sp + 2] + x[b + 10];
	const solidC = x[cp] + x[cp + 1] + x[cp + 2] + x[b + 11];
	let waterS = x[b + 2];
	let waterC = x[b + 3];
	let heldTar = x[b + 12];
	let heldAcid = x[b + 13];
	let flow = dryGas * gasCp + steam * steamCp + (acid + tar + mist) * organicCp;
	const perFlow = 1 / flow;
	const perDryGas = 1 / dryGas;
	const sink = (toWood * ts + toWall * tw) * perBoth;
	const lost0 = both * perFlow < 40 ? -both * perFlow : -40;
	const i0 = Math.floor(lost0 * perE + .5);
	const r0 = lost0 - i0 * eachPart;
	const eff = 1 - (1 + r0 * (1 + r0 * (.5 + r0 * (1 / 6 + r0 * (1 / 24 + r0 * (1 / 120)))))) * partTable[i0 & 63] * octaveTable[(i0 >> 6) + octaves];
	const meanC = sink + (gasC - sink) * eff * flow * perBoth;
	const gasMeanC = meanC;
	const qs = toWood * (meanC - ts);
	const qw = toWall * (meanC - tw);
	gasC -= (qs + qw) * perFlow;
	let heatS = solidCp * solidS + waterCp * waterS + organicCp * (heldTar + heldAcid);
	const heatC = solidCp * solidC + waterCp * waterC;
	const loose = waterS / (waterS + .03 * solidS);
	const perAntoine = 1 / (antoineC + ts);
	let vapour = 0;
	if (waterS !== 0) {
		const x1 = antoineA - antoineB * perAntoine;
		const i1 = Math.floor(x1 * perE + .5);
		const r1 = x1 - i1 * eachPart;
		vapour = loose * (1 + r1 * (1 + r1 * (.5 + r1 * (1 / 6 + r1 * (1 / 24 + r1 * (1 / 120)))))) * partTable[i1 & 63] * octaveTable[(i1 >> 6) + octaves];
	}
	const capped = vapour > mostVapourKPa;
	if (capped) vapour = mostVapourKPa;
	const k = dryGas * exchange;
	const perRest = 1 / (airPressureKPa - vapour);
	const wetting = k * (waterOverAir * vapour * perRest - steam * perDryGas);
	const slope = capped || vapour === 0 ? 0 : k * waterOverAir * airPressureKPa * vapour * antoineB * perAntoine * perAntoine * perRest * perRest;
	const latent = latentKJ(ts);
	const pull = qs + toCore * (tc - ts) + touch * (tw - ts);
	const a12 = -dt * toCore;
	const a22 = heatC + dt * toCore;
	const perA22 = 1 / a22;
	const r2 = -dt * toCore * (tc - ts);
	let a11 = heatS + dt * (latent * slope + toCore);
	let r1 = dt * (pull - latent * wetting);
	let rise = (r1 * a22 - a12 * r2) / (a11 * a22 - a12 * a12);
	let off = wetting + slope * rise;
	const most = waterS * perDt;
	const least = -.98 * steam;
	if (off > most || off < least) {
		off = off > most ? most : least;
		a11 = heatS + dt * toCore;
		r1 = dt * (pull - latent * off);
		rise = (r1 * a22 - a12 * r2) / (a11 * a22 - a12 * a12);
	}
	const riseC = (r2 - a12 * rise) * perA22;
	const carried = waterCp * off * dt;
	ts = ts + rise * (heatS / (heatS - carried > .2 * heatS ? heatS - carried : .2 * heatS));
	tc += riseC;
	waterS -= off * dt;
	let souring = 0;
	if (heldAcid !== 0) {
		const full = capped ? vapour : Math.min(mostVapourKPa, vapour / (loose + 1e-9));
		souring = m[26] * (heldAcid / (waterS + .03 * solidS + heldAcid)) * humidity(full);
	}
	let acidOff = k * (souring - acid * perDryGas);
	if (acidOff * dt > heldAcid) acidOff = heldAcid * perDt;
	else if (acidOff < -.95 * acid) acidOff = -.95 * acid;
	let can = 0;
	if (heldTar !== 0) {
		const x2 = (ts - m[24]) * perTarSlope;
		const i2 = Math.floor(x2 * perE + .5);
		const r2 = x2 - i2 * eachPart;
		can = (1 + r2 * (1 + r2 * (.5 + r2 * (1 / 6 + r2 * (1 / 24 + r2 * (1 / 120)))))) * partTable[i2 & 63] * octaveTable[(i2 >> 6) + octaves];
		can *= heldTar / (heldTar + .001 * solidS + 1e-9);
	}
	let tarOff = k * (can - tar * perDryGas);
	if (tarOff * dt > heldTar) tarOff = heldTar * perDt;
	else if (tarOff < -.95 * tar) tarOff = -.95 * tar;
	const back = flow + 1.9 * off + 1.5 * (acidOff + tarOff) || 1e-9;
	gasC = (gasC * flow + (steamCp * off + organicCp * (acidOff + tarOff)) * x[b + 0]) / back;
	heldAcid -= acidOff * dt;
	heldTar -= tarOff * dt;
	steam += off;
	acid += acidOff;
	tar += tarOff;
	flow = back;
	if (waterC > 0) {
		const boilsC = 99 + 25 * (.05 / (waterC / solidC + .05));
		if (tc > boilsC) {
			const lam = latentKJ(tc);
			let gone = (tc - boilsC) * heatC / lam * m[21];
			if (gone > waterC) gone = waterC;
			tc -= gone * lam / (heatC - 4.19 * gone > .1 ? heatC - waterCp * gone : .1);
			waterC -= gone;
			const carries = steamCp * gone * perDt;
			gasC = (gasC * flow + carries * tc) / (flow + carries);
			flow += carries;
			steam += gone * perDt;
		}
		const creep = (waterC / solidC - waterS / solidS) * solidC * .5 * m[20];
		if (creep > 0) {
			const hs = solidCp * solidS + waterCp * waterS + organicCp * (heldTar + heldAcid);
			ts = (ts * hs + waterCp * creep * tc) / (hs + waterCp * creep);
			waterC -= creep;
			waterS += creep;
		}
	}
	let newMist = 0;
	m[atCelsius] = ts + shift;
	if (m[atCelsius] >= 120 && breakDown(x, sp, b + 10, m)) {
		heatS = solidCp * solidS + waterCp * waterS;
		ts += heat * m[atGave] / heatS;
		const g = m[atGaveGas] * perDt;
		const w = m[atGaveWater] * perDt;
		const c = (m[atGaveAcid] + m[atGaveTar]) * perDt;
		const carries = gasCp * g + steamCp * w + organicCp * c;
		gasC = (gasC * flow + carries * ts) / (flow + carries);
		flow += carries;
		dryGas += g;
		steam += w;
		acid += m[atGaveAcid] * perDt;
		newMist += m[atGaveTar] * perDt;
		if (books) books.heatMade += heat * m[atGave] + m[atGaveWater] * (steamAtZeroKJ + (steamCp - solidCp) * ts) + m[atGaveGas] * -.41999999999999993 * ts;
	}
	m[atCelsius] = tc + shift;
	if (m[atCelsius] >= 120 && breakDown(x, cp, b + 11, m)) {
		tc += heat * m[atGave] / (solidCp * solidC + waterCp * waterC);
		const g = m[atGaveGas] * perDt;
		const w = m[atGaveWater] * perDt;
		const c = (m[atGaveAcid] + m[atGaveTar]) * perDt;
		const carries = gasCp * g + steamCp * w + organicCp * c;
		gasC = (gasC * flow + carries * tc) / (flow + carries);
		dryGas += g;
		steam += w;
		acid += m[atGaveAcid] * perDt;
		newMist += m[atGaveTar] * perDt;
		if (books) books.heatMade += heat * m[atGave] + m[atGaveWater] * (steamAtZeroKJ + (steamCp - solidCp) * tc) + m[atGaveGas] * -.41999999999999993 * tc;
	}
	mist += newMist * mistShare;
	tar += newMist * (1 - mistShare);
	const out = m[15] * (tw - te);
	const lost = m[16] * (te - m[30]);
	x[b + 14] = tw + m[18] * (qw - touch * (tw - x[b + 0]) - out);
	x[b + 15] = te + m[17] * (out - lost);
	if (books) books.heatLost += lost * dt;
	x[b + 0] = ts;
	x[b + 1] = tc;
	x[b + 2] = waterS;
	x[b + 3] = waterC;
	x[b + 12] = heldTar;
	x[b + 13] = heldAcid;
	const near = 1 - Math.abs(place - z);
	const weight = near > 0 ? near : z === 0 && place < 0 || z === 9 && place > 9 ? 1 : 0;
	if (weight > 0) {
		probeWall += weight * ((1 - seen) * x[b + 14] + seen * gasMeanC);
		probeWeight += weight;
	}
	m[31] = gasC;
	m[32] = dryGas;
	m[33] = steam;
	m[34] = acid;
	m[35] = tar;
	m[36] = mist;
	m[37] = probeWall;
	m[38] = probeWeight;
}
var defaultTrust = {
	wall: .25,
	smoke: .6,
	wallK: 10,
	wallShare: .06,
	smokeK: 5,
	smokeShare: .05,
	looks: 1
};
/** Log of a Student density with four degrees of freedom, up to a constant: a spike or a wrong hour costs little. */
function student(r) {
	return -2.5 * Math.log(1 + r * r / 4);
}
function logistic$1(x) {
	return 1 / (1 + Math.exp(-x));
}
/** Shares of acid and tar in the condensate of the moment. */
function acidShare(x, o) {
	const all = x[o + 160] + x[o + 161] + x[o + 162];
	return all > 1e-7 ? x[o + 161] / all : 0;
}
function tarShare(x, o) {
	const all = x[o + 160] + x[o + 161] + x[o + 162];
	return all > 1e-7 ? x[o + 162] / all : 0;
}
/** Degree of charring, 0 raw .. 1 through: what has left of the parts that leave. */
function charred(x, o, dryKg) {
	let left = 0;
	for (let z = 0; z < 10; z++) {
		const b = o + z * 16;
		for (let j = 0; j < 3; j++) left += x[b + 4 + j] + x[b + 7 + j];
	}
	return 1 - left / dryKg;
}
var upper = {
	pale: .06,
	amber: .14,
	dark: .28
};
var lower = {
	amber: .06,
	dark: .14,
	black: .28
};
/** Probability of a look of the drip: clear below 3 % acids, then by tar (classes of the job; 14 % is where it turns dark). */
function dripChance(look, acid, tar) {
	if (look === "none") return 1;
	const watery = logistic$1(Math.log(.03 / (acid + 1e-4)) / .35);
	const lnTar = Math.log(tar + 1e-4);
	const over = (limit) => logistic$1((lnTar - Math.log(limit)) / .3);
	const below = upper[look];
	const above = lower[look];
	const byTar = (above === void 0 ? 1 : over(above)) - (below === void 0 ? 0 : over(below));
	const chance = look === "clear" ? watery * (1 - over(.14)) : look === "pale" ? (1 - watery) * byTar : byTar;
	return .04 + .96 * Math.max(0, chance);
}
/** Probability of a look of the smoke: white while watery, yellow with acids, blue and clear as charring ends (trade facts 1.2). */
function smokeChance(look, acid, char) {
	if (look === "none") return 1;
	const watery = logistic$1(Math.log(.04 / (acid + 1e-4)) / .5);
	const late = logistic$1((char - .75) / .07);
	const over = logistic$1((char - .95) / .02);
	const chance = look === "white" ? watery * (1 - late) + .2 * (1 - watery) * (1 - late) : look === "yellow" ? (1 - watery) * (1 - late) : look === "blue" ? late * (1 - over) : over;
	return .1 + .9 * Math.max(0, chance);
}
/** Log-likelihood of one beat's readings and looks for one kiln state. */
function fitOfMinute(x, o, dryKg, history, seen, beat, trust) {
	let fit = 0;
	if (beat % 3 === 0) {
		const wall = history.wall[beat];
		if (wall === wall) fit += trust.wall * student((wall - x[o + 165]) / (trust.wallK + trust.wallShare * Math.abs(wall - 20)));
		const smoke = history.smoke[beat];
		if (smoke === smoke) fit += trust.smoke * student((smoke - x[o + 164]) / (trust.smokeK + trust.smokeShare * Math.abs(smoke - 20)));
		else {
			const over = history.outlet[beat] - x[o + 164];
			if (over > 0) fit += trust.smoke * student(over / 5);
		}
	}
	for (const s of seen) {
		if (s.beat !== beat) continue;
		if (s.drip !== void 0) fit += trust.looks * Math.log(dripChance(s.drip, acidShare(x, o), tarShare(x, o)));
		if (s.smoke !== void 0) fit += .5 * trust.looks * Math.log(smokeChance(s.smoke, acidShare(x, o), charred(x, o, dryKg)));
	}
	return fit;
}
var featureCount = 16;
var usualDryKg = 54;
var wallMark = 160;
/** Adds a beat to the heat integrals. */
function addHeat(s) {
	const h = s.history;
	const k = h.length - 1;
	const { massKg, moisturePct } = s.charge;
	const dry = massKg === void 0 ? usualDryKg : massKg * (1 - (moisturePct ?? 27) / 100);
	const wall = h.wall[k];
	const add = Math.max(0, h.fire[k] - h.outlet[k]) * 120 / 3600 / dry;
	s.heat.all += add;
	if (s.heat.since160 > 0 || wall > wallMark) s.heat.since160 += add;
}
function logOdds(share) {
	return Math.log((share + .01) / (1.01 - share));
}
function last$1(column, length) {
	for (let k = length - 1; k >= 0 && k > length - 16; k--) {
		const v = column[k];
		if (!Number.isNaN(v)) return v;
	}
	return NaN;
}
/** Smoke as read within the last three beats; NaN without a living probe. */
function smokeRead(s) {
	return last$1(s.history.smoke.subarray(Math.max(0, s.history.length - 3)), Math.min(3, s.history.length));
}
/** The features now; `into` holds `featureCount` numbers. */
function featuresOf(s, into) {
	const e = s.estimate;
	if (!e) {
		into.fill(0);
		return;
	}
	let tarry = 0;
	let watery = 0;
	for (let m = 0; m < 80; m++) {
		const o = m * 168;
		const w = s.weights[m];
		if (tarShare(s.members.kilns, o) > .14) tarry += w;
		if (acidShare(s.members.kilns, o) < .03) watery += w;
	}
	const hoursTo = (t, most) => t === void 0 ? most : Math.min(most, Math.max(0, (t - s.at) / 36e5));
	const wallNow = last$1(s.history.wall, s.history.length);
	const wall = Number.isNaN(wallNow) ? 100 : wallNow;
	const smoke = smokeRead(s);
	into[0] = logOdds(tarry);
	into[1] = logOdds(watery);
	into[2] = Math.log(e.tarShare + .003);
	into[3] = Math.log(e.acidShare + .003);
	into[4] = e.smokeC / 100;
	into[5] = 3 * e.charShare;
	into[6] = Math.log(1 + s.heat.since160 / 10);
	into[7] = Math.log(1 + s.history.length * 120 / 3600);
	into[8] = wall / 100;
	into[9] = s.heat.all / 30;
	into[10] = e.smokeSd / 40;
	into[11] = hoursTo(s.ranges.seal?.likely, 8) / 2;
	into[12] = hoursTo(s.ranges.stop?.likely, 6);
	into[13] = (wall - e.smokeC) / 100;
	into[14] = Number.isNaN(smoke) ? 0 : smoke / 100;
	into[15] = Number.isNaN(smoke) ? 0 : (smoke - e.smokeC) / 30;
}
// ../../work/w/calls/server/domain/estimate/correction.ts
/** Value of a form at features `x`. */
function form(correction, weights, x) {
	let sum = weights[featureCount] ?? 0;
	for (let i = 0; i < featureCount; i++) {
		const z = (x[i] - (correction.mean[i] ?? 0)) / (correction.sd[i] ?? 1);
		sum += (weights[i] ?? 0) * Math.max(-3, Math.min(3, z));
	}
	return sum;
}
/** Probabilities that the condensate of the moment is good, watery, tar-laden. */
function classesNow(correction, x) {
	const watery = Math.exp(Math.min(30, form(correction, correction.watery, x)));
	const tarry = Math.exp(Math.min(30, form(correction, correction.tarry, x)));
	const all = 1 + watery + tarry;
	return {
		good: 1 / all,
		watery: watery / all,
		tarry: tarry / all
	};
}
/** Smoke now as 7, 50 and 93 % values, °C. */
function smokeNow(correction, x) {
	const [low = 0, middle = 0, high = 0] = correction.smoke.map((f) => 100 * form(correction, f, x));
	return [
		Math.min(low, middle),
		middle,
		Math.max(high, middle)
	];
}
// ../../work/w/calls/server/domain/estimate/standing.ts
function emptyStanding() {
	return {
		start: false,
		stop: false,
		seal: false,
		startMinutes: 0,
		stopMinutes: 0,
		sealMinutes: 0,
		worth: 0
	};
}
/** Takes one look: worth an hour now, whether charring looks done. Slow smoothing, dead-bands and confirmation against flicker. */
function look$1(st, set, worthNow, done, minutes, smoke) {
	const smooth = smoke ? set.smoothSmokeMin : set.smoothMin;
	st.worth += (worthNow - st.worth) * Math.min(1, minutes / smooth);
	st.startMinutes = st.worth > set.startAbove ? st.startMinutes + minutes : 0;
	if (st.startMinutes >= set.startConfirmMin) st.start = true;
	if (st.start) {
		st.stopMinutes = st.worth < (smoke ? set.stopBelowSmoke : set.stopBelow) ? st.stopMinutes + minutes : 0;
		if (st.stopMinutes >= (smoke ? set.stopConfirmSmokeMin : set.stopConfirmMin)) st.stop = true;
	}
	st.sealMinutes = done ? st.sealMinutes + minutes : 0;
	if (st.sealMinutes >= set.sealConfirmMin) st.seal = true;
}
// ../../work/w/calls/server/domain/estimate/tables/correction.ts
var withSmoke = {
	mean: [
		-2.1712,
		-1.6825,
		-3.3384,
		-3.0332,
		1.1444,
		1.3073,
		.5723,
		1.5622,
		1.5813,
		1.5584,
		.1648,
		2.2221,
		2.9214,
		.4369,
		1.0998,
		-.1359
	],
	sd: [
		3.8834,
		3.8765,
		1.5867,
		1.5364,
		.8457,
		.9995,
		.7542,
		.6522,
		1.138,
		1.2808,
		.1196,
		1.5321,
		2.3089,
		.8644,
		.7362,
		.8842
	],
	watery: [
		.188,
		.7574,
		-.3838,
		-.5894,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		-.5219,
		-.4166,
		-1.2253
	],
	tarry: [
		.7934,
		-.3357,
		1.065,
		.4088,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		1.0753,
		.2818,
		-2.0994
	],
	smoke: [
		[
			-.0122,
			0,
			.1601,
			-.0486,
			.4847,
			-.0244,
			-.0473,
			.0388,
			.0487,
			.0088,
			0,
			-.0225,
			.0115,
			0,
			0,
			0,
			.8589
		],
		[
			-.0308,
			0,
			.1543,
			-.0601,
			.6177,
			-.0179,
			-.0792,
			.0113,
			.0917,
			.0263,
			0,
			-.01,
			-.004,
			0,
			0,
			0,
			1.1118
		],
		[
			-.0344,
			0,
			.2002,
			-.0464,
			.615,
			-.0759,
			-.1228,
			.0105,
			.1459,
			.0182,
			0,
			-.1325,
			-.0132,
			0,
			0,
			0,
			1.4778
		]
	]
};
var without = {
	mean: [
		-2.1611,
		-.7999,
		-3.2027,
		-3.2854,
		1.8478,
		1.5228,
		.5539,
		1.5717,
		1.5894,
		1.5286,
		.926,
		1.7098,
		2.0443,
		-.2584,
		0,
		0
	],
	sd: [
		2.6829,
		3.4044,
		1.5212,
		1.3462,
		1.3759,
		1.1072,
		.7152,
		.631,
		1.1596,
		1.2395,
		.7339,
		1.5567,
		2.2454,
		.7036,
		.001,
		.001
	],
	watery: [
		.8488,
		1.1764,
		-.5178,
		-.0237,
		-.0466,
		-1.4722,
		-.0408,
		.5998,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		-.2548
	],
	tarry: [
		1.117,
		.5236,
		.3641,
		-1.1046,
		.1833,
		.8496,
		.1043,
		.2496,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		-1.1821
	],
	smoke: [
		[
			-.1543,
			0,
			.2024,
			-.0651,
			.1722,
			-.2401,
			.0054,
			.2079,
			.0325,
			-.0586,
			0,
			-.1584,
			.0447,
			0,
			0,
			0,
			.5503
		],
		[
			-.0658,
			0,
			.1908,
			-.1961,
			.4053,
			-.0497,
			.2512,
			.3986,
			-.1621,
			-.2729,
			0,
			-.0133,
			-.0797,
			0,
			0,
			0,
			1.1785
		],
		[
			.0799,
			0,
			.2078,
			-.1757,
			.6111,
			.2137,
			-.0515,
			.2566,
			.0116,
			-.1338,
			0,
			.1909,
			-.1536,
			0,
			0,
			0,
			1.823
		]
	]
};
// ../../work/w/calls/server/domain/estimate/judge.ts
var beatMin = 2;
var firstBeat = 12;
/** A drip below this says little about its worth, yet must not silence a stop. */
var leastFlowKgH = .3;
/** A leak is told once two members in five need one, where one sealing in eight was thought to leak; firings with a tight seal stayed below 0.2. */
var leakChance = .4;
var leakAfterMs = 144e5;
/** Correction apart for kilns with and without a living smoke probe: when the probe fails, the model takes over. */
function correctionFor(smoke) {
	return Number.isNaN(smoke) ? without : withSmoke;
}
var heedMin = 40;
var atOnceMin = 6;
var outBeats = 5;
var laterMin = 30;
/**
* Odds by which a look of the drip shifts the classes (good, watery, tar-laden), just taken and half an hour later: how looks and shares
* went together in 500 simulated firings, people who err by a shade included. Amber is still good when seen and on its way to tar.
*/
var heedOdds = {
	none: [[
		1,
		1,
		1
	], [
		1,
		1,
		1
	]],
	clear: [[
		1,
		9,
		.2
	], [
		1,
		3,
		.4
	]],
	pale: [[
		4,
		.7,
		.3
	], [
		3,
		.8,
		.5
	]],
	amber: [[
		1.2,
		.3,
		1
	], [
		.8,
		.4,
		2
	]],
	dark: [[
		1,
		.1,
		20
	], [
		1,
		.1,
		15
	]],
	black: [[
		.3,
		.1,
		30
	], [
		.3,
		.1,
		20
	]]
};
/** The newest look of the drip and how long ago it was taken, minutes. */
function lastDrip(s) {
	const now = s.history.length;
	let newest;
	for (const seen of s.seen) if (seen.drip !== void 0 && seen.beat <= now && (!newest || seen.beat >= newest.beat)) newest = seen;
	return newest?.drip === void 0 ? null : {
		look: newest.drip,
		age: (now - newest.beat) * 120 / 60
	};
}
/** What the operator saw of the drip weighs beside the estimate, ageing, and fading once it is half an hour old. */
function heed(c, drip) {
	if (!drip) return c;
	const [fresh, later] = heedOdds[drip.look];
	const aged = Math.min(1, drip.age / laterMin);
	const kept = Math.exp(-Math.max(0, drip.age - laterMin) / heedMin);
	const odds = (k) => Math.exp(kept * ((1 - aged) * Math.log(fresh[k] ?? 1) + aged * Math.log(later[k] ?? 1)));
	const [good, watery, tarry] = [
		c.good * odds(0),
		c.watery * odds(1),
		c.tarry * odds(2)
	];
	const all = good + watery + tarry;
	return {
		good: good / all,
		watery: watery / all,
		tarry: tarry / all
	};
}
var hourBeats = 30;
var flatBeats = 5;
/** How fast the wall climbed in the last hour, K/h; null without readings. */
function wallClimb({ history }) {
	const around = (to) => {
		const read = [...history.wall.subarray(Math.max(0, to - flatBeats), Math.max(0, to))].filter((v) => !Number.isNaN(v));
		return read.reduce((a, b) => a + b, 0) / read.length;
	};
	const climb = around(history.length) - around(history.length - hourBeats);
	return Number.isNaN(climb) ? null : climb;
}
/** Charring looks done: far on, and nothing warms any more or the smoke is thin; or, without a smoke probe, long after it was nearly so. */
function isDone(s, set, smoke, charred) {
	if (charred > set.sealNearChar && s.nearBeat < 0) s.nearBeat = s.history.length;
	if (!Number.isNaN(smoke)) return charred > set.sealChar && smoke > set.sealSmokeC;
	const climb = wallClimb(s);
	return charred > set.sealChar && climb !== null && climb < set.sealFlatKPerH || s.nearBeat > 0 && s.history.length >= set.sealOverNear * s.nearBeat;
}
/** A small fire that is kept, but has gone out: what never caught will not give vinegar, however warm the firebox was. */
function fireOut(s) {
	if (s.standing.start) return false;
	const h = s.history;
	let warm = 0;
	for (let k = Math.max(0, h.length - outBeats); k < h.length; k++) if (h.fire[k] > s.config.limits.fireOutC) warm++;
	return warm === 0;
}
/** After each beat: what stands advised. */
function judge$1(s, set) {
	const e = s.estimate;
	if (!e) return;
	addHeat(s);
	featuresOf(s, s.features);
	if (s.history.length < firstBeat) return;
	const smoke = smokeRead(s);
	const correction = correctionFor(smoke);
	const drip = lastDrip(s);
	s.smokeShiftK = 0;
	const c = heed(classesNow(correction, s.features), drip);
	const worth = s.config.worth;
	const worthNow = Math.max(leastFlowKgH, e.condensateKgH) * (worth.good * c.good + worth.tarry * c.tarry + worth.watery * c.watery);
	const done = isDone(s, set, smoke, e.charShare);
	look$1(s.standing, set, s.config.way === "kept" && fireOut(s) ? Math.min(0, worthNow) : worthNow, done, beatMin, !Number.isNaN(smoke));
	if (drip && drip.age <= atOnceMin) {
		if (drip.look === "pale" || drip.look === "amber") s.standing.start ||= worthNow > set.startAbove;
		if (drip.look === "dark" || drip.look === "black") s.standing.stop ||= s.standing.start;
	}
	if (Number.isNaN(smoke)) {
		const [low, middle, high] = smokeNow(correction, s.features);
		const coolest = Math.max(s.airC, s.history.outlet[s.history.length - 1]);
		s.smokeShiftK = Math.max(coolest, middle) - e.smokeC;
		s.estimate = {
			...e,
			smokeC: e.smokeC + s.smokeShiftK,
			smokeSd: Math.max(1, (high - low) / 3)
		};
	}
}
/** Advice of a burning or sealed kiln. */
function adviceOf(s) {
	const e = s.estimate;
	const st = s.standing;
	const because = {};
	if (e) {
		const acid = {
			code: "acid-share",
			value: e.acidShare,
			limit: .03
		};
		const tar = {
			code: "tar-share",
			value: e.tarShare,
			limit: .14
		};
		const worth = {
			code: "worth-now",
			value: st.worth
		};
		because["start-collecting"] = [acid, worth];
		because["stop-collecting"] = [tar, worth];
		because.seal = [{
			code: "charred",
			value: e.charShare,
			forS: st.sealMinutes * 60
		}];
	}
	const sealed = s.sealedAt >= 0;
	if (sealed) because.open = [{
		code: "hottest-upper",
		value: s.sealed.upperC,
		limit: s.config.limits.openHottestC
	}];
	const unsure = e ? e.smokeSd : 99;
	return {
		collectWorthPerH: e ? st.worth : null,
		startCollecting: st.start,
		stopCollecting: st.stop,
		seal: st.seal,
		hottestUpperC: sealed ? s.sealed.upperC : null,
		airLeak: sealed && s.at - s.sealedAt > leakAfterMs && s.sealed.leakChance > leakChance,
		because,
		sure: unsure < 10 ? "high" : unsure < 30 ? "middle" : "low"
	};
}
// ../../work/w/calls/server/domain/kiln/parameters.ts
var unknowns = [
	{
		name: "draught",
		median: .0076,
		spread: .38,
		scale: "log"
	},
	{
		name: "inletShare",
		median: .88,
		spread: .12,
		scale: "log"
	},
	{
		name: "fireWater",
		median: .065,
		spread: .35,
		scale: "log"
	},
	{
		name: "gasToWood",
		median: .074,
		spread: .4,
		scale: "log"
	},
	{
		name: "gasToWall",
		median: .0078,
		spread: .5,
		scale: "log"
	},
	{
		name: "woodToWall",
		median: .0039,
		spread: .45,
		scale: "log"
	},
	{
		name: "wallToEarth",
		median: .0103,
		spread: .45,
		scale: "log"
	},
	{
		name: "earthHeat",
		median: 250,
		spread: .5,
		scale: "log"
	},
	{
		name: "earthToAir",
		median: .012,
		spread: .4,
		scale: "log"
	},
	{
		name: "probePlace",
		median: .56,
		spread: 1,
		scale: "share"
	},
	{
		name: "probeGas",
		median: .06,
		spread: .9,
		scale: "share"
	},
	{
		name: "charge",
		median: 1,
		spread: .08,
		scale: "log"
	},
	{
		name: "moisture",
		median: 0,
		spread: 1,
		scale: "linear"
	},
	{
		name: "piece",
		median: 1,
		spread: .3,
		scale: "log"
	},
	{
		name: "kinetics",
		median: 0,
		spread: 10,
		scale: "linear"
	},
	{
		name: "breakdownHeat",
		median: 60,
		spread: 90,
		scale: "linear"
	},
	{
		name: "acidYield",
		median: 1,
		spread: .25,
		scale: "log"
	},
	{
		name: "tarYield",
		median: 1,
		spread: .25,
		scale: "log"
	},
	{
		name: "tarBoils",
		median: 239,
		spread: 20,
		scale: "linear"
	},
	{
		name: "mist",
		median: .06,
		spread: .8,
		scale: "share"
	},
	{
		name: "acidVolatility",
		median: .85,
		spread: .35,
		scale: "log"
	},
	{
		name: "chimneyLoss",
		median: .1,
		spread: .6,
		scale: "share"
	},
	{
		name: "draughtDrift",
		median: .14,
		spread: .23,
		scale: "linear"
	},
	{
		name: "draughtEarly",
		median: 1,
		spread: .2,
		scale: "log"
	},
	{
		name: "draughtLate",
		median: 1,
		spread: .2,
		scale: "log"
	},
	{
		name: "coreSlow",
		median: 1,
		spread: .4,
		scale: "log"
	}
];
var unknownCount = unknowns.length;
/** Physical values of one member: the unknowns in order, then what follows from them and the charge. */
var valuesLength = unknownCount + 4;
var dryKgAt = unknowns.length;
var waterKgAt = unknownCount + 1;
var coreConductanceAt = unknownCount + 2;
var coreShareAt = unknownCount + 3;
var at = Object.fromEntries(unknowns.map((u, i) => [u.name, i]));
function physical(u, z) {
	if (u.scale === "log") return u.median * Math.exp(u.spread * z);
	if (u.scale === "linear") return u.median + u.spread * z;
	const logit = Math.log(u.median / (1 - u.median)) + u.spread * z;
	return 1 / (1 + Math.exp(-logit));
}
var woodConductivity = 15e-5;
var woodDensity = 600;
/** Fills one member's physical values from its latents. Missing records widen: mass 57 kg dry +-25 %, moisture 27 +-9 %, pieces 65 mm +-30 %. */
function toPhysical(latents, from, charge, values, to) {
	for (const [i, u] of unknowns.entries()) values[to + i] = physical(u, latents[from + i]);
	const zMoisture = latents[from + at.moisture];
	const wet = charge.moisturePct === void 0 ? 27 + 9 * zMoisture : charge.moisturePct + (1.5 + .08 * charge.moisturePct) * zMoisture;
	const share = Math.min(.6, Math.max(.03, wet / 100));
	const mass = charge.massKg === void 0 ? 57 / (1 - share) * Math.exp(.25 * latents[from + at.charge]) : charge.massKg * values[to + at.charge];
	const dry = mass * (1 - share);
	values[to + dryKgAt] = dry;
	values[to + waterKgAt] = mass * share;
	const thick = (charge.pieceMm ?? 65) / 1e3 * (charge.pieceMm === void 0 ? 1 : 1) * values[to + at.piece];
	const area = 4 * dry / woodDensity / thick;
	values[to + coreConductanceAt] = woodConductivity * area / (thick / 5) * values[to + at.coreSlow];
	values[to + coreShareAt] = .5;
}
var meanS = 480;
var leastCaught = .2;
var wallLagS = 90;
var smokeLagS = 25;
/** A cold kiln, just loaded. */
function load(x, o, p, q, coldC) {
	x.fill(0, o, o + 168);
	const n = 10;
	const dry = p[q + dryKgAt] / n;
	const water = p[q + waterKgAt] / n;
	const core = p[q + coreShareAt];
	for (let z = 0; z < n; z++) {
		const b = o + z * 16;
		for (const k of [
			0,
			1,
			14,
			15
		]) x[b + k] = coldC;
		x[b + 2] = water * (1 - core);
		x[b + 3] = water * core;
		for (let j = 0; j < 3; j++) {
			x[b + 4 + j] = dry * (1 - core) * partShares[j];
			x[b + 7 + j] = dry * core * partShares[j];
		}
	}
	x[o + 164] = coldC;
	x[o + 165] = coldC;
	x[o + 166] = coldC;
}
/** One step of one kiln: state `x` from `o`, physical values `p` from `q`. `m` is a bench of `benchLength` numbers to work on. */
function step$1(x, o, p, q, drive, m, books) {
	const n = 10;
	const dt = drive.seconds;
	const amb = drive.ambientC;
	const warm = (x[o + 166] - 70) / 100;
	const swing = p[q + at.draughtDrift] * (warm < -.5 ? -.5 : warm > 2 ? 2 : warm);
	const early = drive.hours < 1 ? 1 : drive.hours > 4 ? 0 : (4 - drive.hours) / 3;
	const late = drive.hours < 5 ? 0 : drive.hours > 10 ? 1 : (drive.hours - 5) / 5;
	const season = 1 + early * (p[q + at.draughtEarly] - 1) + late * (p[q + at.draughtLate] - 1);
	const gas = p[q + at.draught] * season * (1 + (swing < -.6 ? -.6 : swing)) * drive.air;
	const fire = drive.fireC > amb ? drive.fireC : amb;
	let gasC = amb + p[q + at.inletShare] * (fire - amb);
	const burning = fire > 350 ? 1 : fire < 80 ? .1 : .1 + .9 * (fire - 80) / 270;
	let steam = gas * p[q + at.fireWater] * burning;
	m[34] = 0;
	m[35] = 0;
	m[36] = 0;
	m[32] = gas;
	const toWood = p[q + at.gasToWood] / n;
	const toWall = p[q + at.gasToWall] / n;
	const both = toWood + toWall;
	m[12] = 1 / both;
	m[13] = 1 / dt;
	m[14] = p[q + at.woodToWall] / n;
	m[15] = p[q + at.wallToEarth] / n;
	m[16] = p[q + at.earthToAir] / n;
	m[17] = dt * n / p[q + at.earthHeat];
	m[18] = dt * n / 32;
	m[19] = p[q + coreConductanceAt] / n;
	m[20] = dt / (dt + 9e3 * p[q + at.piece] * p[q + at.piece]);
	m[21] = dt / (dt + 40);
	m[22] = p[q + at.kinetics];
	m[23] = p[q + at.breakdownHeat];
	m[24] = p[q + at.tarBoils];
	m[25] = p[q + at.mist];
	m[26] = p[q + at.acidVolatility];
	m[27] = p[q + at.probeGas];
	m[28] = 1 - exp(-toWood / (gas * gasCp));
	m[29] = p[q + at.probePlace] * n - .5;
	m[37] = 0;
	m[38] = 0;
	if (books) {
		books.waterIn += steam * dt;
		books.heatIn += (gas * gasCp * gasC + steam * (steamAtZeroKJ + steamCp * gasC)) * dt;
	}
	m[6] = dt;
	m[7] = p[q + at.acidYield];
	m[8] = p[q + at.tarYield];
	m[9] = toWood;
	m[10] = toWall;
	m[11] = both;
	m[30] = amb;
	m[31] = gasC;
	m[33] = steam;
	for (let z = 0; z < n; z++) zone(x, o + z * 16, z, m, books);
	gasC = m[31];
	const dryGas = m[32];
	steam = m[33];
	const acid = m[34];
	const tar = m[35];
	const mist = m[36];
	const probeWall = m[37];
	const probeWeight = m[38];
	if (books) {
		books.waterOut += steam * dt;
		books.acidOut += acid * dt;
		books.tarOut += (tar + mist) * dt;
		books.gasOut += (dryGas - gas) * dt;
		books.heatOut += (dryGas * gasCp * gasC + steam * (steamAtZeroKJ + steamCp * gasC) + (acid + tar + mist) * organicCp * gasC) * dt;
	}
	const smoke = amb + (1 - p[q + at.chimneyLoss]) * (gasC - amb);
	x[o + 166] = smoke;
	const outletC = drive.outletC < smoke ? drive.outletC : smoke;
	const left = dryGas * humidity(Math.min(mostVapourKPa, saturationKPa$1(outletC < 99 ? outletC : 99)));
	const water = steam > left ? steam - left : 0;
	const caught = Math.max(leastCaught, water / (steam + 1e-12));
	const waterCaught = steam * caught;
	const acidCaught = acid * caught;
	const tarCaught = (tar + mist) * Math.sqrt(caught);
	const f = dt / (dt + meanS);
	x[o + 160] = x[o + 160] + f * (waterCaught - x[o + 160]);
	x[o + 161] = x[o + 161] + f * (acidCaught - x[o + 161]);
	x[o + 162] = x[o + 162] + f * (tarCaught - x[o + 162]);
	x[o + 163] = x[o + 163] + (waterCaught + acidCaught + tarCaught) * dt;
	x[o + 164] = x[o + 164] + dt / (dt + smokeLagS) * (smoke - x[o + 164]);
	x[o + 165] = x[o + 165] + dt / (dt + wallLagS) * (probeWall / probeWeight - x[o + 165]);
}
// ../../work/w/calls/server/domain/estimate/random.ts
/** A seeded generator whose whole state is one 32-bit word (Mulberry's mixing, from memory): same numbers on every machine. */
function nextUniform(word, i = 0) {
	word[i] = word[i] + 1831565813 >>> 0;
	let t = word[i];
	t = Math.imul(t ^ t >>> 15, t | 1);
	t ^= t + Math.imul(t ^ t >>> 7, t | 61);
	return ((t ^ t >>> 14) >>> 0) / 4294967296;
}
/** Standard normal by summing twelve uniforms: no tails beyond six, no logarithm, good enough for a prior. */
function nextNormal(word) {
	let sum = -6;
	for (let k = 0; k < 12; k++) sum += nextUniform(word);
	return sum;
}
// ../../work/w/calls/server/domain/estimate/moves.ts
/** Runs one kiln through beat `beat` of the history and returns what its fit gains. */
function liveBeat(x, o, p, q, history, seen, beat, drive, trust, scratch) {
	drive.fireC = history.fire[beat];
	drive.outletC = history.outlet[beat];
	drive.air = history.air[beat];
	drive.hours = beat * 120 / 3600;
	step$1(x, o, p, q, drive, scratch);
	return fitOfMinute(x, o, p[q + dryKgAt], history, seen, beat, trust);
}
/** Makes a proposal for a member. */
function propose$1(members, move, member, charge, coldC, word) {
	const n = unknownCount;
	let a = Math.floor(nextUniform(word) * 80);
	let b = Math.floor(nextUniform(word) * 80);
	if (a === member) a = (a + 1) % 80;
	while (b === member || b === a) b = (b + 1) % 80;
	const afresh = nextUniform(word) < .12;
	const leap = nextUniform(word) < .1 ? 1 : .2 + .5 * nextUniform(word);
	const share = nextUniform(word) < .5 ? 1 : .3;
	for (let i = 0; i < n; i++) {
		const own = members.latents[member * n + i];
		const moves = nextUniform(word) < share;
		if (afresh) move.latents[i] = nextNormal(word);
		else move.latents[i] = moves ? own + leap * (members.latents[a * n + i] - members.latents[b * n + i]) + .08 * nextNormal(word) : own;
	}
	toPhysical(move.latents, 0, charge, move.values, 0);
	load(move.kiln, 0, move.values, 0, coldC);
	move.member = member;
	move.beat = 0;
	move.lived = 0;
	move.fit = 0;
	move.afresh = afresh;
}
function priorOf(latents, from) {
	let sum = 0;
	for (let i = 0; i < unknownCount; i++) sum -= .5 * latents[from + i] * latents[from + i];
	return sum;
}
/** The fit above which the proposal would be taken, by the number that will decide. */
function barOf(members, move, word) {
	const m = move.member;
	const prior = move.afresh ? 0 : priorOf(move.latents, 0) - priorOf(members.latents, m * unknownCount);
	peek[0] = word[0];
	return Math.log(nextUniform(peek) + 1e-12) - prior + members.fits[m];
}
var peek = /* @__PURE__ */ new Uint32Array(1);
/** Takes or leaves a proposal whose turn has come; one that was not lived to the present has fallen behind. */
function decide(members, move, present, word) {
	const m = move.member;
	const taken = move.fit > barOf(members, move, word) && move.lived === present;
	nextUniform(word);
	if (taken) {
		members.latents.set(move.latents, m * unknownCount);
		members.values.set(move.values, m * valuesLength);
		members.kilns.set(move.kiln, m * 168);
		members.fits[m] = move.fit;
	}
	return taken;
}
/** Normalised weights into `into`; returns the effective number of members. */
function normalise(members, into) {
	let top = -Infinity;
	for (let m = 0; m < 80; m++) if (members.weights[m] > top) top = members.weights[m];
	let sum = 0;
	for (let m = 0; m < 80; m++) {
		into[m] = Math.exp(members.weights[m] - top);
		sum += into[m];
	}
	let squares = 0;
	for (let m = 0; m < 80; m++) {
		into[m] = into[m] / sum;
		squares += into[m] * into[m];
	}
	return 1 / squares;
}
/** Draws the members anew by weight (systematic), in place: members that are drawn twice overwrite members that are not drawn. */
function redraw(members, weights, word) {
	const counts = /* @__PURE__ */ new Int32Array(80);
	let sum = 0;
	let m = 0;
	const u = nextUniform(word);
	for (let k = 0; k < 80; k++) {
		const mark = (k + u) / 80;
		while (m < 79 && sum + weights[m] < mark) sum += weights[m++];
		counts[m] = counts[m] + 1;
	}
	let free = 0;
	for (let from = 0; from < 80; from++) for (; counts[from] > 1; counts[from] = counts[from] - 1) {
		while (counts[free] > 0) free++;
		const [n, v, s] = [
			unknownCount,
			valuesLength,
			168
		];
		members.latents.copyWithin(free * n, from * n, (from + 1) * n);
		members.values.copyWithin(free * v, from * v, (from + 1) * v);
		members.kilns.copyWithin(free * s, from * s, (from + 1) * s);
		members.fits[free] = members.fits[from];
		counts[free] = 1;
	}
	members.weights.fill(0);
}
// ../../work/w/calls/server/domain/estimate/worth.ts
function logistic(x) {
	return 1 / (1 + Math.exp(-x));
}
var wateryBelow = .03;
var tarryAbove = .14;
var acidBlur = .3;
var tarBlur = .2;
/** Worth an hour of what a kiln drips now, in kilograms of good condensate. */
function worthPerH(x, o, worth) {
	const water = x[o + 160];
	const acid = x[o + 161];
	const tar = x[o + 162];
	const all = water + acid + tar;
	if (all < 1e-7) return 0;
	const tarry = logistic(Math.log((tar / all + 1e-5) / tarryAbove) / tarBlur);
	const watery = (1 - tarry) * logistic(Math.log(wateryBelow / (acid / all + 1e-5)) / acidBlur);
	return 3600 * all * (worth.good * (1 - tarry - watery) + worth.tarry * tarry + worth.watery * watery);
}
var stepsPerPoint = 5;
function emptyRunOn() {
	return {
		from: -1,
		point: 0,
		fireC: 0,
		outletC: 0,
		values: new Float64Array(24 * valuesLength),
		kilns: /* @__PURE__ */ new Float64Array(4032),
		worth: /* @__PURE__ */ new Float32Array(1440),
		smoke: /* @__PURE__ */ new Float32Array(1440),
		char: /* @__PURE__ */ new Float32Array(1440)
	};
}
/** Starts a run-on from members drawn evenly by weight. */
function startRunOn(run, members, weights, beat, fireC, outletC) {
	let sum = 0;
	let m = 0;
	for (let k = 0; k < 24; k++) {
		const mark = (k + .5) / 24;
		while (m < 79 && sum + weights[m] < mark) sum += weights[m++];
		run.values.set(members.values.subarray(m * valuesLength, (m + 1) * valuesLength), k * valuesLength);
		run.kilns.set(members.kilns.subarray(m * 168, (m + 1) * 168), k * 168);
	}
	run.from = beat;
	run.point = 0;
	run.fireC = fireC;
	run.outletC = outletC;
}
/** Runs all runners on by one point (ten minutes). */
function runPoint(run, worth, drive, scratch) {
	drive.fireC = run.fireC;
	drive.outletC = run.outletC;
	drive.hours = run.from * 120 / 3600 + (run.point + .5) * 10 / 60;
	for (let k = 0; k < 24; k++) {
		const o = k * 168;
		const q = k * valuesLength;
		let sum = 0;
		for (let s = 0; s < stepsPerPoint; s++) {
			step$1(run.kilns, o, run.values, q, drive, scratch);
			sum += worthPerH(run.kilns, o, worth);
		}
		const i = run.point * 24 + k;
		run.worth[i] = sum / stepsPerPoint;
		run.smoke[i] = run.kilns[o + 166];
		run.char[i] = charred(run.kilns, o, run.values[q + dryKgAt]);
	}
	run.point++;
}
// ../../work/w/calls/server/domain/estimate/outlook.ts
/** The window that one runner would choose for itself (greatest sum of worth), in points from the start of the run-on. */
function bestWindow(worth, runner) {
	let sum = 0;
	let low = 0;
	let lowAt = 0;
	let gain = 0;
	let from = 0;
	let to = 0;
	for (let p = 0; p < 60; p++) {
		sum += worth[p * 24 + runner];
		if (sum < low) {
			low = sum;
			lowAt = p + 1;
		}
		if (sum - low > gain) {
			gain = sum - low;
			from = lowAt;
			to = p + 1;
		}
	}
	return {
		from,
		to
	};
}
function sorted(values, p) {
	return [...values.subarray(p * 24, (p + 1) * 24)].sort((a, b) => a - b);
}
/** Reads a finished run-on: the members' own ranges of the calls, the fan of the smoke. */
function conclude(s, set) {
	const run = s.run;
	const from = s.litAt + run.from * 120 * 1e3;
	const pointMs = 6e5;
	const range = (a) => {
		a.sort((x, y) => x - y);
		const at = (share) => from + a[Math.min(23, Math.floor(share * 24))] * pointMs;
		return {
			earliest: at(.08),
			likely: at(.5),
			latest: at(.92) + pointMs
		};
	};
	const windows = Array.from({ length: 24 }, (_, k) => bestWindow(run.worth, k));
	const through = windows.map((_, k) => {
		for (let p = 0; p < 60; p++) if (run.char[p * 24 + k] > set.sealChar) return p;
		return 60;
	});
	s.ranges = {
		start: range(windows.map((w) => w.from)),
		stop: range(windows.map((w) => w.to)),
		seal: range(through)
	};
	s.view = [];
	for (let p = 0; p < 60; p += 2) {
		const smoke = sorted(run.smoke, p);
		s.view.push({
			t: from + (p + 1) * pointMs,
			low: smoke[2],
			middle: smoke[12],
			high: smoke[21]
		});
	}
}
// ../../work/w/calls/server/domain/estimate/live.ts
var firstMoveBeat = 10;
var firstRunBeat = 8;
/** The fire and outlet of the last 45 minutes stand for what is to come. */
var lastBeats = 22;
var beatsBetweenRuns = 2;
var pointsPerGrid = 2;
/** Share of the full draught at each opening: own judgement. */
var letsThrough = {
	open: 1,
	half: .65,
	hole: .3,
	closed: .05
};
function drive(s) {
	return {
		fireC: s.airC,
		ambientC: s.airC,
		outletC: s.airC,
		hours: 0,
		air: 1,
		seconds: 120
	};
}
function median(a) {
	if (a.length === 0) return NaN;
	a.sort((x, y) => x - y);
	return a[Math.floor(a.length / 2)];
}
/** Median of one channel's row of the beat; NaN without readings. */
function rowMedian(s, row, filled) {
	const a = [];
	for (let i = 0; i < filled; i++) {
		const v = s.beat[row * 12 + i];
		if (!Number.isNaN(v)) a.push(v);
	}
	return median(a);
}
function light$1(s) {
	s.litAt = s.at;
	for (let m = 0; m < 80; m++) {
		for (let i = 0; i < unknownCount; i++) s.members.latents[m * unknownCount + i] = nextNormal(s.word);
		toPhysical(s.members.latents, m * unknownCount, s.charge, s.members.values, m * valuesLength);
		load(s.members.kilns, m * 168, s.members.values, m * valuesLength, s.airC);
	}
	s.members.fits.fill(0);
	s.members.weights.fill(0);
	s.history.length = 0;
	s.move.member = -1;
}
/** Closes a beat: history grows, members live it and are weighed. */
function closeBeat(s, set, scratch) {
	const h = s.history;
	const k = h.length;
	if (k >= 600) return;
	const or = (v, last) => Number.isNaN(v) ? k > 0 ? last[k - 1] : s.airC : v;
	h.fire[k] = or(rowMedian(s, 0, 12), h.fire);
	h.outlet[k] = or(rowMedian(s, 2, 12), h.outlet);
	h.wall[k] = rowMedian(s, 1, 12);
	h.smoke[k] = rowMedian(s, 3, 12);
	h.air[k] = Math.min(letsThrough[s.mouth], letsThrough[s.chimney]);
	h.length = k + 1;
	const d = drive(s);
	const all = s.members;
	for (let m = 0; m < 80; m++) {
		const gain = liveBeat(all.kilns, m * 168, all.values, m * valuesLength, h, s.seen, k, d, set.trust, scratch);
		all.fits[m] = all.fits[m] + gain;
		all.weights[m] = all.weights[m] + gain;
	}
	if (normalise(all, s.weights) < 40) {
		redraw(all, s.weights, s.word);
		s.weights.fill(1 / 80);
	}
}
/**
* A slice of the moves. What readings say of a proposal only ever lowers its fit, so one that has fallen below what it would be taken for
* is not run to the end: it stands until its turn to be decided, and goes on should the bar come down before.
*/
function move$1(s, set, scratch) {
	const h = s.history;
	if (h.length <= firstMoveBeat) return;
	const d = drive(s);
	const mv = s.move;
	if (mv.member < 0) propose$1(s.members, mv, 0, s.charge, s.airC, s.word);
	for (let left = set.moveSteps; left > 0;) {
		const beats = Math.min(left, h.length - mv.beat);
		mv.beat += beats;
		left -= beats;
		const bar = barOf(s.members, mv, s.word);
		while (mv.lived < mv.beat && mv.fit > bar) {
			mv.fit += liveBeat(mv.kiln, 0, mv.values, 0, h, s.seen, mv.lived, d, set.trust, scratch);
			mv.lived++;
		}
		if (mv.beat < h.length) return;
		s.tried++;
		if (decide(s.members, mv, h.length, s.word)) s.taken++;
		propose$1(s.members, mv, (mv.member + 1) % 80, s.charge, s.airC, s.word);
	}
}
/** A slice of the run-on; a finished one is read and the next begun. */
function runOn(s, set, scratch) {
	const h = s.history;
	const run = s.run;
	if (h.length < firstRunBeat) return;
	if (run.from < 0 || run.point >= 60) {
		if (run.from >= 0 && h.length - run.from < beatsBetweenRuns) return;
		const first = Math.max(0, h.length - lastBeats);
		let fire = 0;
		for (let i = first; i < h.length; i++) fire += h.fire[i] / (h.length - first);
		startRunOn(run, s.members, s.weights, h.length, fire, median([...h.outlet.subarray(first, h.length)]));
	}
	const d = {
		...drive(s),
		air: h.air[h.length - 1]
	};
	for (let k = 0; k < pointsPerGrid && run.point < 60; k++) runPoint(run, s.config.worth, d, scratch);
	if (run.point >= 60) conclude(s, set);
}
// ../../work/w/calls/server/domain/estimate/pack.ts
var kinds$1 = {
	Float64Array,
	Float32Array,
	Int32Array,
	Uint32Array
};
function kindOf(value) {
	return Object.keys(kinds$1).find((kind) => value instanceof kinds$1[kind]);
}
/** State to bytes; numbers outside typed arrays must be finite. */
function freeze(state) {
	const arrays = [];
	const text = JSON.stringify(state, (_key, value) => {
		const kind = kindOf(value);
		if (kind === void 0) return value;
		const array = value;
		arrays.push(new Uint8Array(array.buffer, array.byteOffset, array.byteLength));
		return {
			$: kind,
			bytes: array.byteLength
		};
	});
	const total = arrays.reduce((sum, a) => sum + a.length, 4 + 2 * text.length);
	const bytes = new Uint8Array(total);
	const view = new DataView(bytes.buffer);
	view.setUint32(0, text.length);
	for (let i = 0; i < text.length; i++) view.setUint16(4 + 2 * i, text.charCodeAt(i));
	let to = 4 + 2 * text.length;
	for (const a of arrays) {
		bytes.set(a, to);
		to += a.length;
	}
	return bytes;
}
/** Bytes back to a state, bit for bit; throws on bytes that were cut. */
function thaw(bytes) {
	const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
	const length = view.getUint32(0);
	if (4 + 2 * length > bytes.byteLength) throw new RangeError("frozen state is cut short");
	let text = "";
	for (let i = 0; i < length; i++) text += String.fromCharCode(view.getUint16(4 + 2 * i));
	let from = 4 + 2 * length;
	return JSON.parse(text, (_key, value) => {
		if (typeof value !== "object" || value === null || !("$" in value) || !("bytes" in value)) return value;
		const size = Number(value.bytes);
		if (from + size > bytes.byteLength) throw new RangeError("frozen state is cut short");
		const part = bytes.slice(from, from + size);
		from += size;
		return new kinds$1[value.$](part.buffer);
	});
}
// ../../work/w/calls/server/domain/estimate/reading.ts
var wetBelowC = 75;
var wetOver = .15;
var breaking = .95;
var through = .15;
function sliceIs(x, b, zoneDryKg) {
	let left = 0;
	for (let j = 0; j < 3; j++) left += x[b + 4 + j] + x[b + 7 + j];
	if (left < through * zoneDryKg) return 3;
	if (left < breaking * zoneDryKg) return 2;
	const moist = (x[b + 2] + x[b + 3]) / zoneDryKg;
	return x[b + 0] < wetBelowC && moist > wetOver ? 0 : 1;
}
var Moments = class {
	mean = 0;
	square = 0;
	add(weight, value) {
		this.mean += weight * value;
		this.square += weight * value * value;
	}
	sd() {
		return Math.sqrt(Math.max(0, this.square - this.mean * this.mean));
	}
};
/** Weighted mean and spread of the members now. */
function readMembers(s) {
	const [smoke, acid, tar, char] = [
		new Moments(),
		new Moments(),
		new Moments(),
		new Moments()
	];
	const x = s.members.kilns;
	let flow = 0;
	let total = 0;
	const inside = Array.from({ length: 10 }, () => [
		0,
		0,
		0,
		0
	]);
	for (let m = 0; m < 80; m++) {
		const o = m * 168;
		const w = s.weights[m];
		const dry = s.members.values[m * valuesLength + dryKgAt];
		smoke.add(w, x[o + 166]);
		acid.add(w, acidShare(x, o));
		tar.add(w, tarShare(x, o));
		char.add(w, charred(x, o, dry));
		flow += w * 3600 * (x[o + 160] + x[o + 161] + x[o + 162]);
		total += w * x[o + 163];
		for (const [z, slice] of inside.entries()) slice[sliceIs(x, o + z * 16, dry / 10)] += w;
	}
	return {
		smokeC: smoke.mean,
		smokeSd: smoke.sd(),
		acidShare: acid.mean,
		acidSd: acid.sd(),
		tarShare: tar.mean,
		tarSd: tar.sd(),
		condensateKgH: flow,
		condensateKg: total,
		charShare: Math.max(0, char.mean),
		charSd: char.sd(),
		inside,
		from: "ensemble"
	};
}
// ../../work/w/calls/server/domain/kiln/cooling.ts
/** What is unknown about a cooling kiln; normal numbers scaled as named. Spreads: own judgement, wide. */
var coolingUnknowns = [
	{
		name: "innerH",
		median: 1.65,
		spread: .3,
		scale: "log"
	},
	{
		name: "drumHeat",
		median: 1.1,
		spread: .3,
		scale: "log"
	},
	{
		name: "earthHeat",
		median: 5.8,
		spread: .3,
		scale: "log"
	},
	{
		name: "drumToEarth",
		median: .8,
		spread: .3,
		scale: "log"
	},
	{
		name: "earthToAir",
		median: 1.3,
		spread: .32,
		scale: "log"
	},
	{
		name: "charcoalOverWall",
		median: 40,
		spread: 35,
		scale: "linear"
	},
	{
		name: "hottestOver",
		median: 50,
		spread: .45,
		scale: "log"
	},
	{
		name: "earthShare",
		median: .45,
		spread: .5,
		scale: "share"
	},
	{
		name: "hottestKeeps",
		median: .98,
		spread: .1,
		scale: "log"
	},
	{
		name: "airOffset",
		median: 0,
		spread: 1,
		scale: "linear"
	},
	{
		name: "leak",
		median: 7,
		spread: .6,
		scale: "log"
	}
];
var coolingCount = coolingUnknowns.length;
var coolingStepH = 1 / 6;
function coolingValue(i, z) {
	const u = coolingUnknowns[i];
	if (u.scale === "log") return u.median * Math.exp(u.spread * z);
	if (u.scale === "linear") return u.median + u.spread * z;
	return 1 / (1 + Math.exp(-(Math.log(u.median / (1 - u.median)) + u.spread * z)));
}
/** Half-charred wood holds more heat than charcoal: all is slower by `slow`. */
function slowed(i, value, slow) {
	if (i === 0) return value * slow;
	return i >= 1 && i <= 4 || i === coolingCount - 1 ? value / slow : value;
}
/** Puts a kiln at the moment of sealing: the wall as read, the rest by its unknowns. */
function sealAt(x, o, v, q, wallC, airC) {
	const over = Math.max(0, v[q + 5]);
	const earth = airC + v[q + 7] * (wallC - airC);
	x[o] = wallC + over;
	x[o + 1] = wallC;
	x[o + 2] = earth;
	const hotter = v[q + 6];
	x[o + 3] = wallC + over + hotter;
	x[o + 4] = wallC + .5 * hotter;
	x[o + 5] = earth + .3 * hotter;
}
/** One implicit step of a slice: three nodes in a row, solved exactly for the end temperatures, so any step is stable and heat is kept. */
function slice(x, o, toDrum, drum, earth, toEarth, toAir, made, airC, h) {
	const a = h * toDrum;
	const b = h * toEarth;
	const c = h * toAir;
	const r0 = x[o] + made * h;
	const r1 = drum * x[o + 1];
	const r2 = earth * x[o + 2] + c * airC;
	const d2 = earth + b + c;
	const d1 = drum + a + b - b * b / d2 - a * a / (1 + a);
	const w = (r1 + b * r2 / d2 + a * r0 / (1 + a)) / d1;
	x[o] = (r0 + a * w) / (1 + a);
	x[o + 1] = w;
	x[o + 2] = (r2 + b * w) / d2;
}
/** Ten minutes of cooling; `leaks` 0 or 1. */
function coolStep(x, o, v, q, airC, leaks) {
	const air = airC + v[q + 9];
	const made = leaks * v[q + 10];
	slice(x, o, 1 / v[q], v[q + 1], v[q + 2], v[q + 3], v[q + 4], x[o] > 60 ? made : 0, air, coolingStepH);
	slice(x, o + 3, 1 / v[q], v[q + 1], v[q + 2], v[q + 3] / v[q + 8], v[q + 4] / v[q + 8], x[o + 3] > 60 ? 2 * made : 0, air, coolingStepH);
}
// ../../work/w/calls/server/domain/estimate/sealed.ts
var count = 48;
/** Ten-minute beats kept: three days; after that the kiln is cold or leaks. */
var longest = 432;
var movesPerBeat = 240;
var wallK = 1.2;
var wallShare = .02;
var temper = .35;
/** Wet wood over charcoal in heat kept, and the share of charring from which the bed counts as charcoal. */
var woodOverCharcoal = 6;
var charredEnough = .7;
var silentBeats = 6;
var unknownC = 999;
var rawMouthK = 90;
var rawMouthH = 10;
function emptySealed() {
	return {
		length: 0,
		wall: new Float32Array(longest),
		air: new Float32Array(longest),
		core: new Float32Array(longest),
		latents: new Float64Array(count * coolingCount),
		values: new Float64Array(count * coolingCount),
		fits: new Float64Array(count),
		leaks: new Int32Array(count),
		hottest: new Float64Array(count),
		next: 0,
		slow: 1,
		upperC: unknownC,
		leakChance: 0
	};
}
/** Fit of one member to all that was read since sealing; leaves its state at the present in `x`. */
function wholeFit(s, v, q, leaks, x) {
	sealAt(x, 0, v, q, s.wall[0], s.air[0]);
	let fit = 0;
	for (let k = 0; k < s.length; k++) {
		if (k > 0) coolStep(x, 0, v, q, s.air[k], leaks);
		const wall = s.wall[k];
		if (wall === wall && k % 3 === 0) {
			const r = (wall - x[1]) / (wallK + wallShare * Math.abs(wall - s.air[k]));
			fit -= temper * 2.5 * Math.log(1 + r * r / 4);
		}
		const core = s.core[k];
		if (core === core) {
			const r = (core - x[3]) / (3 + .05 * Math.abs(core - s.air[k]));
			fit -= temper * 2.5 * Math.log(1 + r * r / 4);
		}
	}
	return fit;
}
/** Draws the members at sealing. */
function startSealed(s, charShare, word) {
	s.slow = 1 + woodOverCharcoal * Math.max(0, 1 - charShare / charredEnough);
	for (let i = 0; i < s.latents.length; i++) {
		s.latents[i] = nextNormal(word);
		s.values[i] = slowed(i % coolingCount, coolingValue(i % coolingCount, s.latents[i]), s.slow);
	}
	for (let m = 0; m < count; m++) s.leaks[m] = m % 8 === 0 ? 1 : 0;
}
/** Takes one beat of ten minutes and moves members; NaN where nothing was read. */
function sealedBeat(s, wallC, airC, coreC, word) {
	if (s.length < longest) {
		s.wall[s.length] = s.length === 0 && wallC !== wallC ? airC + 150 : wallC;
		s.air[s.length] = airC;
		s.core[s.length] = coreC;
		s.length++;
	}
	const x = /* @__PURE__ */ new Float64Array(6);
	for (let m = 0; m < count; m++) s.fits[m] = wholeFit(s, s.values, m * coolingCount, s.leaks[m], x);
	const z = new Float64Array(coolingCount);
	const v = new Float64Array(coolingCount);
	for (let k = 0; k < movesPerBeat; k++) {
		const m = s.next;
		s.next = (m + 1) % count;
		const a = (m + 1 + Math.floor(nextUniform(word) * 47)) % count;
		let b = (m + 1 + Math.floor(nextUniform(word) * 47)) % count;
		if (b === a) b = (b + 1) % count;
		const afresh = nextUniform(word) < .05;
		const leap = nextUniform(word) < .1 ? 1 : .2 + .6 * nextUniform(word);
		let prior = 0;
		for (let i = 0; i < coolingCount; i++) {
			const own = s.latents[m * coolingCount + i];
			z[i] = afresh ? nextNormal(word) : own + leap * (s.latents[a * coolingCount + i] - s.latents[b * coolingCount + i]) + .1 * nextNormal(word);
			v[i] = slowed(i, coolingValue(i, z[i]), s.slow);
			if (!afresh) prior += .5 * (own * own - z[i] * z[i]);
		}
		const leaks = nextUniform(word) < .1 ? 1 - s.leaks[m] : s.leaks[m];
		if (leaks !== s.leaks[m]) prior += leaks === 1 ? -1.95 : 1.95;
		const fit = wholeFit(s, v, 0, leaks, x);
		if (Math.log(nextUniform(word) + 1e-12) < fit - s.fits[m] + prior) {
			s.latents.set(z, m * coolingCount);
			s.values.set(v, m * coolingCount);
			s.leaks[m] = leaks;
			s.fits[m] = fit;
		}
	}
	let leaking = 0;
	let mean = 0;
	let square = 0;
	const air = s.air[s.length - 1];
	for (let m = 0; m < count; m++) {
		wholeFit(s, s.values, m * coolingCount, s.leaks[m], x);
		const hottest = Math.max(x[0], x[3]);
		s.hottest[m] = hottest;
		leaking += s.leaks[m] / count;
		const log = Math.log(Math.max(.5, hottest - air));
		mean += log / count;
		square += log * log / count;
	}
	const sd = Math.sqrt(Math.max(0, square - mean * mean));
	s.upperC = air + Math.exp(mean + 3.1 * sd) + 1;
	const hours = (s.length - 1) * coolingStepH;
	if (s.slow > 1.5) s.upperC = Math.max(s.upperC, air + rawMouthK * Math.exp(-hours / rawMouthH));
	let heard = false;
	for (let k = Math.max(0, s.length - silentBeats); k < s.length; k++) heard ||= !Number.isNaN(s.wall[k]) || !Number.isNaN(s.core[k]);
	if (!heard) s.upperC = unknownC;
	s.leakChance = leaking;
}
// ../../work/w/calls/server/domain/estimate/settings.ts
var defaultSettings = {
	trust: defaultTrust,
	moveSteps: 150,
	startAbove: .1,
	stopBelow: -.5,
	stopBelowSmoke: 0,
	startConfirmMin: 8,
	stopConfirmMin: 12,
	stopConfirmSmokeMin: 8,
	smoothMin: 12,
	smoothSmokeMin: 10,
	sealChar: .93,
	sealFlatKPerH: 18,
	sealSmokeC: 230,
	sealNearChar: .9,
	sealOverNear: 1.25,
	sealConfirmMin: 12
};
// ../../work/w/calls/server/domain/estimate/shape.ts
function emptyMembers(count) {
	return {
		latents: new Float64Array(count * unknownCount),
		values: new Float64Array(count * valuesLength),
		kilns: new Float64Array(count * 168),
		fits: new Float64Array(count),
		weights: new Float64Array(count)
	};
}
function emptyHistory$1() {
	return {
		length: 0,
		fire: /* @__PURE__ */ new Float32Array(600),
		outlet: /* @__PURE__ */ new Float32Array(600),
		wall: /* @__PURE__ */ new Float32Array(600),
		smoke: /* @__PURE__ */ new Float32Array(600),
		air: /* @__PURE__ */ new Float32Array(600)
	};
}
function emptyMove() {
	return {
		member: -1,
		beat: 0,
		lived: 0,
		fit: 0,
		afresh: false,
		latents: new Float64Array(unknownCount),
		values: new Float64Array(valuesLength),
		kiln: /* @__PURE__ */ new Float64Array(168)
	};
}
function emptyState(config) {
	return {
		config,
		charge: config.charge,
		word: new Uint32Array([config.seed >>> 0]),
		at: 0,
		litAt: -1,
		sealedAt: -1,
		mouth: "open",
		chimney: "open",
		airC: 20,
		beat: (/* @__PURE__ */ new Float32Array(72)).fill(NaN),
		filled: 0,
		members: emptyMembers(80),
		weights: (/* @__PURE__ */ new Float64Array(80)).fill(1 / 80),
		history: emptyHistory$1(),
		seen: [],
		move: emptyMove(),
		run: emptyRunOn(),
		sealed: emptySealed(),
		features: new Float64Array(featureCount),
		smokeShiftK: 0,
		heat: {
			all: 0,
			since160: 0
		},
		standing: emptyStanding(),
		nearBeat: -1,
		ranges: {
			start: null,
			stop: null,
			seal: null
		},
		view: [],
		estimate: null,
		tried: 0,
		taken: 0
	};
}
// ../../work/w/calls/server/domain/estimate/ensemble.ts
var sealedEvery = 5;
var mostSeen = 300;
function take$1(s, e) {
	if (e.kind === "charge") s.charge = {
		...s.charge,
		...e.charge
	};
	else if (e.kind === "lit") {
		if (s.litAt < 0) light$1(s);
	} else if (s.litAt < 0) return;
	else if (e.kind === "sealed") {
		if (s.sealedAt >= 0) return;
		s.sealedAt = e.at;
		startSealed(s.sealed, s.estimate?.charShare ?? 0, s.word);
	} else if (e.kind === "air") {
		s.mouth = e.mouth ?? s.mouth;
		s.chimney = e.chimney ?? s.chimney;
	} else if (s.seen.length < mostSeen) {
		const beat = Math.max(0, Math.floor((e.at - s.litAt) / 1e3 / 120));
		if (e.kind === "drip") s.seen.push({
			beat,
			drip: e.look
		});
		else if (e.kind === "smoke") s.seen.push({
			beat,
			smoke: e.look
		});
	}
}
function write$1(s, r) {
	const row = [
		r.fireboxC,
		r.wallC,
		r.outletC,
		r.smokeC,
		r.ambientC,
		r.coreC
	];
	for (let c = 0; c < 6; c++) s.beat[c * 12 + s.filled] = row[c] ?? NaN;
	s.filled++;
}
var shiftFadesMs = 108e5;
/** The members' own fan, begun where the corrected smoke is; what is hours ahead keeps what they say. */
function shifted(p, s) {
	const by = s.smokeShiftK * Math.exp(-Math.max(0, p.t - s.at) / shiftFadesMs);
	return {
		t: p.t,
		low: p.low + by,
		middle: p.middle + by,
		high: p.high + by
	};
}
function before(s, r) {
	const cold = r.ambientC ?? r.outletC ?? r.wallC;
	if (cold !== null && cold < 45) s.airC = cold;
}
/** Estimator with settings of its own; `ensemble` is the one in use. */
function makeEnsemble(set) {
	const scratch = /* @__PURE__ */ new Float64Array(39);
	return {
		version: 2,
		start: emptyState,
		step(s, r, evidence) {
			s.at = r.at;
			for (const e of evidence) take$1(s, e);
			if (s.litAt < 0) {
				before(s, r);
				return s;
			}
			write$1(s, r);
			if (s.filled === 12) {
				s.filled = 0;
				if (s.sealedAt < 0) {
					closeBeat(s, set, scratch);
					s.estimate = readMembers(s);
					judge$1(s, set);
				} else if (Math.floor((s.at - s.sealedAt) / 1e3 / 120) % sealedEvery === 0) {
					const air = [
						rowMedian(s, 4, 12),
						rowMedian(s, 2, 12),
						s.airC
					].find((v) => !Number.isNaN(v)) ?? s.airC;
					sealedBeat(s.sealed, rowMedian(s, 1, 12), air, rowMedian(s, 5, 12), s.word);
				}
			}
			if (s.sealedAt < 0) {
				move$1(s, set, scratch);
				runOn(s, set, scratch);
			}
			return s;
		},
		estimate: (s) => s.estimate,
		advice: adviceOf,
		forecast(s) {
			const calls = {};
			if (s.sealedAt < 0) {
				if (s.ranges.start && !s.standing.start) calls["start-collecting"] = s.ranges.start;
				if (s.ranges.stop && !s.standing.stop) calls["stop-collecting"] = s.ranges.stop;
				if (s.ranges.seal && !s.standing.seal) calls.seal = s.ranges.seal;
			}
			return {
				calls,
				view: {
					at: s.at,
					smoke: s.sealedAt < 0 ? s.view.map((p) => shifted(p, s)) : []
				}
			};
		},
		freeze,
		thaw: (bytes) => thaw(bytes)
	};
}
var ensemble = makeEnsemble(defaultSettings);
// ../../work/w/calls/server/domain/estimate/learned/network.ts
/** No sign counts for more than five of its spreads: the worlds it learned from did not go further. */
var farthest = 5;
function outputsOf(network, signs) {
	let layer = signs.map((value, i) => {
		const scaled = (value - (network.mean[i] ?? 0)) / (network.spread[i] ?? 1);
		return Math.min(Math.max(scaled, -5), farthest);
	});
	network.weights.forEach((weights, l) => {
		const biases = network.biases[l] ?? [];
		const width = biases.length;
		const next = biases.slice();
		layer.forEach((value, i) => {
			for (let k = 0; k < width; k++) next[k] = (next[k] ?? 0) + value * (weights[i * width + k] ?? 0);
		});
		layer = l < network.weights.length - 1 ? next.map(Math.tanh) : next;
	});
	return layer;
}
/** Shares of good, watery and tar-laden condensate that sum to 1. */
function runNetwork(network, signs) {
	const out = outputsOf(network, signs);
	const top = Math.max(...out);
	const raised = out.map((value) => Math.exp(value - top));
	const sum = raised.reduce((a, b) => a + b, 0);
	return [
		(raised[0] ?? 0) / sum,
		(raised[1] ?? 0) / sum,
		(raised[2] ?? 0) / sum
	];
}
// ../../work/w/calls/server/domain/estimate/learned/horizon.ts
/** One truth in ten lies before the first and one after the last. */
var horizonLevels = [
	.1,
	.5,
	.9
];
/** Hours until each call: mean of the networks, in order and not in the past. */
function horizonOf(networks, signs) {
	const outs = networks.map((network) => outputsOf(network, signs));
	const hours = (c) => {
		const level = (q) => outs.reduce((sum, out) => sum + (out[c * horizonLevels.length + q] ?? 0), 0) / outs.length;
		const [low = 0, middle = 0, high = 0] = [
			0,
			1,
			2
		].map((q) => Math.max(0, level(q))).sort((a, b) => a - b);
		return [
			low,
			middle,
			high
		];
	};
	return {
		start: hours(0),
		stop: hours(1),
		seal: hours(2)
	};
}
// ../../work/w/calls/server/domain/estimate/learned/memory.ts
/** How many minutes are kept: the longest look back is two and a half hours. */
var keptMinutes = 151;
/** Wall and smoke temperatures whose first passing is remembered, °C. */
var wallMarks = [
	60,
	100,
	160,
	220,
	280
];
var smokeMarks = [
	75,
	90,
	105,
	120
];
function emptyMemory(charge) {
	return {
		minute: 0,
		litMinute: null,
		airC: 20,
		charge,
		firebox: [],
		outlet: [],
		smoke: [],
		smoothWall: [],
		load: [],
		lowSmoke: [],
		smoothFirebox: 0,
		slowFirebox: 0,
		peakLoadK: 0,
		loadKh: 0,
		heatKh: 0,
		heatSince100Kh: 0,
		heatSince160Kh: 0,
		wallPassed: wallMarks.map(() => null),
		smokePassed: smokeMarks.map(() => null),
		smokeHeardAt: null,
		fedAt: null,
		wettedAt: null,
		drip: 0,
		dripAt: 0,
		amberAt: null,
		look: 0
	};
}
var last = (values) => values[values.length - 1];
function keep(values, value) {
	values.push(value);
	if (values.length > keptMinutes) values.shift();
}
/** The q-quantile (0..1) of the newest `count` values, interpolated; NaN of nothing. */
function quantile$1(values, count, q) {
	const part = values.slice(-count).sort((a, b) => a - b);
	if (part.length === 0) return NaN;
	const at = q * (part.length - 1);
	const low = Math.floor(at);
	const a = part[low] ?? NaN;
	return a + ((part[low + 1] ?? a) - a) * (at - low);
}
function nearer(from, to, minutes) {
	return from + (1 - Math.exp(-1 / minutes)) * (to - from);
}
/** Lighting: what the probes said in the quarter of an hour before is the air. */
function light(memory) {
	memory.litMinute = memory.minute;
	const before = [...memory.outlet.slice(-15), ...memory.smoothWall.slice(-15)];
	if (before.length > 0) memory.airC = quantile$1(before, before.length, .5);
	memory.peakLoadK = 0;
}
/** One minute on. Changes `memory`; a channel that is silent keeps its last value, as long as it ever had one. */
function rememberMinute(memory, heard) {
	memory.minute++;
	const outlet = heard.outletC ?? last(memory.outlet);
	const wall = heard.wallC ?? last(memory.smoothWall);
	const firebox = heard.fireboxC ?? last(memory.firebox);
	if (outlet === void 0 || wall === void 0 || firebox === void 0) return;
	const first = memory.smoothWall.length === 0;
	keep(memory.firebox, firebox);
	keep(memory.outlet, outlet);
	keep(memory.smoothWall, first ? wall : nearer(last(memory.smoothWall) ?? wall, wall, 3));
	memory.smoothFirebox = first ? firebox : nearer(memory.smoothFirebox, firebox, 20);
	memory.slowFirebox = first ? firebox : nearer(memory.slowFirebox, firebox, 90);
	if (heard.smokeC !== null) {
		keep(memory.smoke, heard.smokeC);
		keep(memory.lowSmoke, quantile$1(memory.smoke, 25, .25));
		memory.smokeHeardAt = memory.minute;
	}
	keep(memory.load, quantile$1(memory.outlet, 30, .25) - memory.airC);
	rememberSeen(memory, heard);
	if (memory.litMinute !== null) addUp(memory, firebox, outlet);
}
function rememberSeen(memory, heard) {
	if (heard.fed) memory.fedAt = memory.minute;
	if (heard.wetted) memory.wettedAt = memory.minute;
	if (heard.smoke > 0) memory.look = heard.smoke;
	if (heard.drip === 0) return;
	if (heard.drip >= 3 && memory.drip < 3) memory.amberAt = memory.minute;
	memory.drip = heard.drip;
	memory.dripAt = memory.minute;
}
/** Sums of a lit firing: heat as firebox over outlet, and the condenser's load, K·h. */
function addUp(memory, firebox, outlet) {
	const load = last(memory.load) ?? 0;
	if (memory.minute - (memory.litMinute ?? 0) > 20) memory.peakLoadK = Math.max(memory.peakLoadK, load);
	memory.loadKh += Math.max(load, 0) / 60;
	const wall = last(memory.smoothWall) ?? 0;
	wallMarks.forEach((mark, i) => {
		if (wall > mark) memory.wallPassed[i] ??= memory.minute;
	});
	const smoke = last(memory.lowSmoke);
	if (smoke !== void 0) smokeMarks.forEach((mark, i) => {
		if (smoke > mark) memory.smokePassed[i] ??= memory.minute;
	});
	const heat = Math.max(firebox - outlet, 0) / 60;
	memory.heatKh += heat;
	if (memory.wallPassed[1] !== null) memory.heatSince100Kh += heat;
	if (memory.wallPassed[2] !== null) memory.heatSince160Kh += heat;
}
// ../../work/w/calls/server/domain/estimate/learned/signs.ts
/** Assumed where nobody weighed: a 200-litre drum of air-dry wood, kg and share of water on the wet basis. Common practice, no source. */
var usual = {
	massKg: 80,
	moisture: .27,
	pieceMm: 65
};
var ago = (values, minutes) => values[Math.max(0, values.length - 1 - minutes)] ?? 0;
var change = (values, minutes) => ago(values, 0) - ago(values, minutes);
function hoursSince(memory, minute) {
	return minute === null || minute === void 0 ? 0 : Math.log(1 + (memory.minute - minute) / 60);
}
function chargeSigns(memory) {
	const { massKg, moisturePct, pieceMm } = memory.charge;
	const known = massKg !== void 0 && moisturePct !== void 0;
	const mass = massKg ?? usual.massKg;
	const moisture = moisturePct === void 0 ? usual.moisture : moisturePct / 100;
	const dryKg = mass * (1 - moisture);
	const waterKg = mass * moisture;
	const piece = ((pieceMm ?? usual.pieceMm) - usual.pieceMm) / 20;
	return {
		dryKg,
		waterKg,
		signs: [
			known ? 1 : 0,
			known ? (dryKg - 58) / 15 : 0,
			known ? (waterKg - 22) / 10 : 0,
			piece
		]
	};
}
/** A probe that has been silent for ten minutes is no probe. */
function smokeIsHeard(memory) {
	return memory.smokeHeardAt !== null && memory.minute - memory.smokeHeardAt <= 10;
}
function smokeSigns(memory, loadK) {
	if (!smokeIsHeard(memory)) return [
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0,
		0
	];
	const low = ago(memory.lowSmoke, 0);
	return [
		1,
		(low - 90) / 40,
		(quantile$1(memory.smoke, 5, .5) - 90) / 40,
		change(memory.lowSmoke, 30) / 15,
		change(memory.lowSmoke, 90) / 30,
		(low - loadK - memory.airC) / 50,
		...memory.smokePassed.map((minute) => hoursSince(memory, minute))
	];
}
function seenSigns(memory) {
	const grades = [
		1,
		2,
		3,
		4,
		5
	].map((grade) => memory.drip === grade ? 1 : 0);
	const looks = [
		1,
		2,
		3,
		4
	].map((look) => memory.look === look ? 1 : 0);
	const dripAge = memory.drip > 0 ? Math.log(1 + (memory.minute - memory.dripAt) / 15) : 0;
	const amberAge = memory.amberAt !== null && memory.drip >= 3 ? Math.log(1 + (memory.minute - memory.amberAt) / 15) : 0;
	const wetAge = memory.wettedAt === null ? 0 : Math.min(memory.minute - memory.wettedAt, 60) / 30;
	return [
		...grades,
		...looks,
		dripAge,
		amberAge,
		memory.wettedAt === null ? 0 : 1,
		wetAge
	];
}
/** All signs of this minute; meaningful once lit and once every one of the three probes has been heard. */
function signsOf(memory) {
	const air = memory.airC;
	const { dryKg, waterKg, signs: charge } = chargeSigns(memory);
	const wall = ago(memory.smoothWall, 0);
	const load = ago(memory.load, 0);
	const highLoad = quantile$1(memory.outlet, 20, .9) - air;
	return [
		Math.max(memory.minute - (memory.litMinute ?? memory.minute), 0) / 60,
		(wall - air) / 100,
		change(memory.smoothWall, 20) / 20,
		change(memory.smoothWall, 60) / 60,
		change(memory.smoothWall, 150) / 150,
		...memory.wallPassed.map((minute) => hoursSince(memory, minute)),
		load / 30,
		memory.peakLoadK / 30,
		Math.min(Math.max(load / Math.max(memory.peakLoadK, 8), -.5), 1.2),
		change(memory.load, 60) / 20,
		change(memory.load, 120) / 20,
		(highLoad - load) / 20,
		(quantile$1(memory.outlet, 5, .5) - air) / 30,
		(quantile$1(memory.outlet, 60, .2) - air) / 30,
		memory.smoothFirebox / 600,
		memory.slowFirebox / 600,
		(ago(memory.firebox, 0) - memory.smoothFirebox) / 100,
		memory.heatKh / 4e3,
		memory.heatKh / dryKg / 60,
		memory.heatSince100Kh / 4e3,
		memory.heatSince100Kh / (dryKg + waterKg) / 60,
		memory.heatSince160Kh / 4e3,
		memory.heatSince160Kh / (dryKg + waterKg) / 60,
		memory.loadKh / 100,
		memory.loadKh / 100 * 60 / (dryKg + .5 * waterKg),
		...charge,
		air / 20,
		(wall - ago(memory.outlet, 0)) / 100,
		...smokeSigns(memory, load),
		...seenSigns(memory)
	];
}
// ../../work/w/calls/server/domain/estimate/learned/judge.ts
/** Grid steps of 10 s in a minute. */
var gridPerMinute = 6;
/** The value is smoothed over this time: shorter than a bottle, longer than the swings of fire and cloths. */
var smoothingMinutes = 12;
var drips = [
	"none",
	"clear",
	"pale",
	"amber",
	"dark",
	"black"
];
var smokes = [
	"none",
	"white",
	"yellow",
	"blue",
	"clear"
];
var channels = [
	"fireboxC",
	"wallC",
	"outletC",
	"smokeC"
];
function startJudge(charge) {
	return {
		memory: emptyMemory(charge),
		sums: [
			0,
			0,
			0,
			0
		],
		counts: [
			0,
			0,
			0,
			0
		],
		steps: 0,
		fed: false,
		wetted: false,
		drip: 0,
		smoke: 0,
		shares: null,
		worth: null
	};
}
/** One grid step of 10 s. Changes `state`. */
function stepJudge(state, readings, evidence, networks, worth) {
	for (const seen of evidence) takeEvidence(state, seen);
	channels.forEach((channel, i) => {
		const value = readings[channel];
		if (value === null) return;
		state.sums[i] = (state.sums[i] ?? 0) + value;
		state.counts[i] = (state.counts[i] ?? 0) + 1;
	});
	if (++state.steps < gridPerMinute) return;
	closeMinute(state);
	if (state.memory.litMinute !== null && state.memory.smoothWall.length > 0) judgeMinute(state, networks, worth);
}
function takeEvidence(state, seen) {
	switch (seen.kind) {
		case "lit":
			light(state.memory);
			break;
		case "fed":
			state.fed = true;
			break;
		case "wetted":
			state.wetted = true;
			break;
		case "drip":
			state.drip = Math.max(drips.indexOf(seen.look), 0);
			break;
		case "smoke":
			state.smoke = Math.max(smokes.indexOf(seen.look), 0);
			break;
		case "charge": state.memory.charge = {
			...state.memory.charge,
			...seen.charge
		};
	}
}
function closeMinute(state) {
	const mean = (i) => (state.counts[i] ?? 0) > 0 ? (state.sums[i] ?? 0) / (state.counts[i] ?? 1) : null;
	rememberMinute(state.memory, {
		fireboxC: mean(0),
		wallC: mean(1),
		outletC: mean(2),
		smokeC: mean(3),
		fed: state.fed,
		wetted: state.wetted,
		drip: state.drip,
		smoke: state.smoke
	});
	state.sums.fill(0);
	state.counts.fill(0);
	state.steps = 0;
	state.fed = false;
	state.wetted = false;
	state.drip = 0;
	state.smoke = 0;
}
function judgeMinute(state, networks, worth) {
	const signs = signsOf(state.memory);
	const shares = [
		0,
		0,
		0
	];
	for (const network of networks) runNetwork(network, signs).forEach((share, c) => shares[c] = (shares[c] ?? 0) + share / networks.length);
	const value = shares[0] * worth.good + shares[1] * worth.watery + shares[2] * worth.tarry;
	const sinceLit = state.memory.minute - (state.memory.litMinute ?? 0);
	state.shares = shares;
	state.worth = state.worth === null || sinceLit < 2 ? value : state.worth + (1 - Math.exp(-1 / smoothingMinutes)) * (value - state.worth);
}
// ../../work/w/calls/server/domain/estimate/learned/tables/horizon.ts
var horizons = [{
	"sizes": [
		58,
		32,
		24,
		9
	],
	"mean": [
		4.594,
		1.328,
		.4877,
		.4722,
		.4301,
		.9336,
		.6359,
		.4638,
		.3186,
		.1977,
		.5273,
		1.148,
		.3879,
		.08585,
		.1904,
		.7087,
		.7287,
		.4368,
		.8851,
		.7701,
		.1538,
		.6043,
		.6983,
		.2302,
		.1964,
		.1606,
		.1369,
		.704,
		.5941,
		.8052,
		.1413,
		.08765,
		.1055,
		.8782,
		1.107,
		.4461,
		.08104,
		.208,
		.3574,
		.4519,
		.5677,
		.2653,
		.1763,
		.1373,
		.1102,
		.179,
		.1234,
		.03954,
		.02869,
		.02919,
		.2162,
		.1419,
		.04148,
		.001522,
		.2985,
		.1391,
		.4583,
		.1156
	],
	"spread": [
		3.159,
		1.23,
		.6903,
		.5943,
		.4532,
		.8103,
		.7611,
		.6821,
		.5875,
		.478,
		.5367,
		.6029,
		.3804,
		.7721,
		.9451,
		.8623,
		.7057,
		.4857,
		.3279,
		.3178,
		.7423,
		.4805,
		.5953,
		.3516,
		.3154,
		.2936,
		.2613,
		.7216,
		.5946,
		.3971,
		.8122,
		.9811,
		.8948,
		.3301,
		1.238,
		.4981,
		1.156,
		1.293,
		.9891,
		.9871,
		1.111,
		.5667,
		.4516,
		.3901,
		.3427,
		.3844,
		.3298,
		.1959,
		.1679,
		.1693,
		.4127,
		.3499,
		.2004,
		.03998,
		.4381,
		.484,
		.4993,
		.1935
	],
	"weights": [
		[
			-.1017,
			.04384,
			.1787,
			.09745,
			.2424,
			.2568,
			-.2548,
			-.004665,
			-.2734,
			-.1419,
			.4221,
			-.6147,
			-.3506,
			.1072,
			.1897,
			.2646,
			-.02661,
			-.008964,
			.3954,
			.5906,
			.007315,
			-.1414,
			.2061,
			.1972,
			-.07312,
			.1044,
			-.1342,
			-.4141,
			-.007047,
			-.1937,
			-.2326,
			.2698,
			.06745,
			.08269,
			.1268,
			-.09142,
			-.09755,
			-.1597,
			.004352,
			-.04568,
			.3078,
			.237,
			.2157,
			.1899,
			.08537,
			-.0587,
			.1997,
			-.1749,
			.03744,
			.1767,
			.00715,
			.05851,
			-.3533,
			-.07988,
			-.1063,
			-.1152,
			-.08438,
			.01543,
			.07755,
			-.06305,
			.2241,
			.0285,
			-.1828,
			.2299,
			-.1964,
			-.06937,
			.006286,
			-.1715,
			-.002292,
			-.07603,
			-.2021,
			-.0939,
			-.01692,
			-.09575,
			-.3255,
			.08299,
			-.02374,
			.2409,
			-.1172,
			.06971,
			-.1726,
			-.02255,
			.06615,
			.06308,
			.004451,
			-.1571,
			.04229,
			-.09016,
			.213,
			-.3011,
			.07198,
			.009263,
			.02307,
			-.03821,
			-.07206,
			-.001679,
			-.1316,
			-.09172,
			.01344,
			-.2099,
			-.006396,
			-.1944,
			.2614,
			-.03125,
			.2269,
			.1771,
			-.09592,
			.09323,
			-.004093,
			-.03946,
			.158,
			.1419,
			-.1497,
			.1146,
			-.01382,
			.04424,
			.009121,
			.1007,
			-.04533,
			-.2688,
			-.04689,
			-.504,
			.1937,
			.2044,
			.01951,
			.08759,
			-.1769,
			.004013,
			-.03137,
			-.04266,
			.03502,
			.05294,
			.05447,
			-.08141,
			-.1527,
			.1653,
			.06107,
			-.1018,
			.2839,
			-.1068,
			.09364,
			-.037,
			.2504,
			-.01486,
			-.1853,
			-.2078,
			-.05666,
			.02095,
			-.1274,
			.1649,
			.01332,
			.1018,
			-.04607,
			.1046,
			-.04291,
			-.1508,
			-.05972,
			.01979,
			-.008191,
			-.461,
			.2173,
			.07649,
			-.121,
			-.3924,
			.01915,
			.4464,
			.1658,
			-.0185,
			-.334,
			-.02192,
			-.07948,
			.01242,
			.2873,
			-.4931,
			.01154,
			-.2088,
			-.01101,
			.2616,
			.09015,
			.04082,
			.1226,
			-.1345,
			.2057,
			.02499,
			-.04178,
			-.1505,
			-.4041,
			.03653,
			.03144,
			-.2779,
			.2893,
			.2287,
			-.0638,
			.1134,
			-.2459,
			-.1924,
			-.04117,
			-.1948,
			-.07128,
			-.1693,
			-.2857,
			.228,
			-.1146,
			.2583,
			.1504,
			-.09367,
			.133,
			-.04379,
			-.01319,
			.0477,
			-.1976,
			.02672,
			-.008436,
			-.0115,
			-.00819,
			.1418,
			.0274,
			-.4264,
			-.1914,
			-.1747,
			-.02976,
			.2373,
			.2213,
			-.07445,
			.2175,
			.1013,
			.02507,
			-.09868,
			.07132,
			-.2331,
			-.2495,
			-.006519,
			.06871,
			.2209,
			.1363,
			.1278,
			-.1472,
			-.02587,
			.2384,
			.04185,
			.07092,
			-.0844,
			.05594,
			.01931,
			-.1183,
			.1201,
			-.07728,
			.02076,
			-.1695,
			-.3024,
			-.01821,
			-.2333,
			.03862,
			.2996,
			.01474,
			.1609,
			-.2418,
			.09964,
			.001559,
			-.001125,
			-.08842,
			.05884,
			-.1774,
			.2008,
			.07632,
			.3233,
			.1555,
			-.1711,
			.002618,
			.02841,
			.006264,
			.101,
			.0902,
			-.1041,
			-.1859,
			.1001,
			.1737,
			.007441,
			-.03291,
			-.07847,
			.1872,
			.07872,
			-.02054,
			.1903,
			.01215,
			-.03603,
			-.2719,
			.00853,
			.07138,
			.1098,
			-.106,
			-.001688,
			-.006774,
			-.1444,
			.02219,
			.122,
			.1287,
			.2362,
			.1417,
			-.3765,
			.5128,
			.1306,
			-.008701,
			.1381,
			.002474,
			-.02392,
			-.1952,
			.1829,
			-.0171,
			-.0233,
			-.06242,
			.01526,
			.196,
			.0806,
			-.0659,
			-.01892,
			-.05314,
			-.08016,
			-.1735,
			.3802,
			-.3028,
			-.1085,
			-.1594,
			-.3921,
			.06131,
			.1992,
			.2308,
			-.05657,
			-.05609,
			.06023,
			.05995,
			-.0493,
			-.03301,
			-.03447,
			-.04409,
			-.1331,
			.1931,
			.1399,
			-.2475,
			-.06382,
			.04828,
			.05199,
			.07678,
			-.05968,
			-.05077,
			-.0315,
			-.012,
			-.007837,
			.07339,
			.3863,
			-.338,
			.00588,
			-.2653,
			.09307,
			.418,
			-.4448,
			-.0494,
			-.1766,
			.09319,
			-.1098,
			-.4378,
			.01767,
			-.1224,
			.1886,
			-.1292,
			.2516,
			-.2551,
			.003593,
			.1709,
			-.234,
			-.1379,
			-.3043,
			-.02173,
			.01524,
			-.1889,
			.5572,
			-.148,
			-.06279,
			-.1624,
			.3046,
			-.05003,
			.2684,
			-.1496,
			.1074,
			.06913,
			.04717,
			-.02284,
			-.08212,
			.1892,
			.2249,
			.08535,
			.02916,
			-.3247,
			-.2657,
			-.1571,
			.06495,
			.1899,
			.01418,
			.2081,
			-.04281,
			-.1217,
			.01101,
			-.06166,
			.2001,
			-.08112,
			-.0611,
			.08474,
			.1648,
			-.1798,
			.003609,
			-.3196,
			-.08136,
			-.01181,
			.1249,
			-.1654,
			.1387,
			-.007663,
			.07052,
			-.3425,
			.132,
			.05719,
			-.1599,
			-.07721,
			-.0557,
			-.01562,
			.03167,
			-.03808,
			.07706,
			-.1193,
			-.01976,
			-.06199,
			.09436,
			-.06735,
			-.2166,
			.03063,
			.01986,
			.006313,
			-.1004,
			-.01028,
			.08326,
			.06745,
			.057,
			.0143,
			-.3317,
			-.0666,
			-.236,
			.1534,
			-.09825,
			.09622,
			-.09784,
			-.1479,
			-.07364,
			.03262,
			-.09264,
			.04111,
			-.06801,
			-.05084,
			-.04183,
			-.209,
			.07766,
			-.1617,
			.3107,
			-.1106,
			.1273,
			.06265,
			.08537,
			.1279,
			.04557,
			-.06283,
			-.1015,
			.167,
			-.2176,
			.02186,
			.05366,
			-.01069,
			-.1473,
			-.2681,
			.1139,
			-.04174,
			.005235,
			-.2702,
			.2498,
			-.2112,
			-.07686,
			-.08016,
			.08071,
			-.1231,
			.09808,
			-.09702,
			-.02283,
			-1877e-7,
			-.0649,
			-.1513,
			.1529,
			.08656,
			.2096,
			.1472,
			-.1139,
			-.4532,
			-.1367,
			-.1604,
			.1712,
			.0876,
			.2169,
			-.09328,
			.08254,
			-.001748,
			-.01149,
			.1984,
			-.02945,
			-.2757,
			-.03597,
			-.1782,
			-.008486,
			-.3114,
			-.04535,
			.1718,
			.2111,
			.2117,
			-.234,
			-.0775,
			-.2367,
			-.2692,
			.1515,
			-.01261,
			.1209,
			-.05593,
			.1738,
			.2093,
			-.04044,
			-.1021,
			-.3944,
			-.1608,
			.1475,
			-.01331,
			.04476,
			-.3078,
			-.09786,
			.05293,
			.03556,
			.06061,
			.213,
			-.1204,
			.2262,
			-.1581,
			-.2619,
			.06016,
			-.06833,
			.3182,
			.0722,
			.2537,
			-.08631,
			.03717,
			-.04207,
			-.2024,
			.1533,
			.1424,
			-.1121,
			.07428,
			.05469,
			.1327,
			.05708,
			-.1652,
			-.09324,
			-.0956,
			-.08894,
			-.007224,
			.1753,
			-.1344,
			-.2325,
			-.2837,
			.03791,
			-.1485,
			.4765,
			-.5247,
			.1064,
			.09512,
			-.5005,
			-.05122,
			.09996,
			-.1758,
			-.04664,
			-.02533,
			.02242,
			-.1714,
			.09286,
			-.4803,
			-.2645,
			-.07569,
			.1187,
			-.0231,
			.2549,
			.1241,
			-.08356,
			-.02001,
			.01673,
			-.05133,
			.09336,
			-.09665,
			.06691,
			.1368,
			-.2591,
			-.06335,
			.5005,
			-.09994,
			.3453,
			.1724,
			-.03063,
			.4653,
			-.1735,
			.5415,
			-.1379,
			-.003948,
			.1235,
			-.1588,
			.2723,
			-.2683,
			.1489,
			.18,
			-.05892,
			-.07388,
			-.2219,
			-.04787,
			-.0361,
			-.186,
			-.1478,
			.1141,
			.1045,
			.2977,
			.1122,
			.01829,
			.4295,
			-.03708,
			.1196,
			-.3122,
			.1326,
			.01541,
			.02295,
			.106,
			.1003,
			-.3751,
			-.1498,
			-.3817,
			.07115,
			.00751,
			.04814,
			-.2188,
			.1212,
			.08198,
			.05045,
			-.3615,
			.04569,
			-.184,
			.1007,
			.03301,
			.1664,
			.1502,
			.04221,
			.06221,
			-.1009,
			.07237,
			-.1664,
			-.02096,
			.025,
			-.1446,
			-.09651,
			.06584,
			.08601,
			.1633,
			-.319,
			.1415,
			.04975,
			.1532,
			.05479,
			.01662,
			-.2487,
			.06214,
			.4461,
			-.3284,
			.1734,
			-.222,
			-.193,
			.2301,
			-.1022,
			-.2805,
			.1477,
			.1334,
			-.2273,
			-.1204,
			-.06788,
			.5471,
			.4404,
			.191,
			.1655,
			.05051,
			.03931,
			-.2479,
			.04817,
			.04363,
			.0683,
			.2683,
			-.3645,
			-.02028,
			.1355,
			.1482,
			.09305,
			.05443,
			.191,
			.1469,
			-.006856,
			-.01204,
			-.3188,
			-.4037,
			.01771,
			.281,
			-.1953,
			-.1706,
			.07204,
			.05015,
			.3105,
			-.01144,
			.1969,
			.4026,
			.2037,
			.2273,
			-.1096,
			-.02073,
			.03515,
			.2026,
			-.0823,
			-.0966,
			.08829,
			.1641,
			.1617,
			-.1248,
			-.03558,
			.01445,
			-.2008,
			-.09114,
			-.1963,
			-.154,
			-.1934,
			-.1793,
			-.1513,
			.1147,
			.282,
			.02202,
			.05951,
			-.1469,
			.09768,
			.006381,
			-.1565,
			.1843,
			.03652,
			.05207,
			-.06861,
			.1243,
			-.07081,
			.2644,
			-.1544,
			.0154,
			-.1585,
			.1419,
			.1669,
			-.08509,
			-.04575,
			-.02854,
			.2118,
			.003126,
			-.01502,
			-.2478,
			-.0596,
			.06115,
			.1859,
			-.07127,
			-1431e-7,
			-.09037,
			.1678,
			.05249,
			.3068,
			-.105,
			-.02246,
			-.03593,
			-.07074,
			-.06396,
			-.09931,
			.002169,
			.03471,
			.1331,
			-.05912,
			.02242,
			-.1898,
			.08923,
			.03653,
			.1344,
			-.1948,
			-.1402,
			.07693,
			.2468,
			.1616,
			.1127,
			-.05586,
			.1435,
			.04705,
			-.1278,
			.08973,
			.04714,
			-.2832,
			-.00609,
			.002218,
			.1237,
			-.2303,
			-.04443,
			.1614,
			-.007513,
			-.07806,
			-.08023,
			-.1934,
			-.188,
			-.05662,
			-.1324,
			-.05032,
			.1111,
			-.003135,
			-.2319,
			.07232,
			.1344,
			.1989,
			-.02852,
			.03995,
			.01222,
			-.07049,
			.03418,
			.1015,
			.1537,
			.06444,
			-8685e-7,
			-.1152,
			-.3632,
			-.0281,
			.2136,
			-.1024,
			-.06539,
			.1449,
			-.1821,
			.1204,
			.155,
			.1464,
			.1095,
			-.009488,
			-.02144,
			.005017,
			.2323,
			-.1421,
			-.05011,
			-.01192,
			.2241,
			.06691,
			.4242,
			-.119,
			-.1116,
			.06976,
			.1287,
			.2357,
			-.2251,
			.01153,
			-.09551,
			.1265,
			.1543,
			.2551,
			.1429,
			.137,
			.27,
			-.2306,
			.1367,
			-.2693,
			-.2205,
			.1746,
			.3217,
			-.2223,
			.1943,
			-.1865,
			-.001642,
			.1832,
			-.1759,
			.02838,
			-.02994,
			-.2657,
			-.1766,
			-.06428,
			.009161,
			.06533,
			.06386,
			-.03722,
			-.3311,
			-.1754,
			.06737,
			.07495,
			-.02283,
			.1356,
			.4087,
			.1811,
			.1361,
			-.1781,
			.1261,
			-.004918,
			.02553,
			.051,
			.03334,
			.3837,
			.1032,
			.2056,
			.09409,
			.1627,
			-.00236,
			.07526,
			-.01213,
			-.09205,
			-.1293,
			-.05778,
			.003771,
			-.2397,
			.04452,
			-.01244,
			.01782,
			.0985,
			-.143,
			-.3172,
			.05834,
			-.116,
			-.0944,
			-.05107,
			.05521,
			.2491,
			-.05743,
			.1623,
			.3115,
			.2667,
			-.1011,
			.1583,
			-.2647,
			-.155,
			-.08871,
			.02429,
			-.01173,
			.02763,
			.007052,
			-.1199,
			-.1609,
			.02827,
			.1861,
			.08362,
			.1952,
			-.009209,
			-.01836,
			-.1978,
			.01722,
			-.1299,
			-.2705,
			.1414,
			-.4307,
			.0724,
			-.3092,
			-.02396,
			.4578,
			.246,
			-.2206,
			.3728,
			.763,
			-.4272,
			.05129,
			.06282,
			-.2082,
			.07848,
			-.0919,
			.009202,
			.3014,
			.08094,
			.3138,
			-.0301,
			-.2717,
			-.09136,
			.4911,
			-.1143,
			.03629,
			.2266,
			-.1655,
			.1034,
			-.1591,
			-.08955,
			-.01209,
			.1065,
			.03399,
			.3933,
			.1289,
			-.2406,
			-.1495,
			-.1649,
			-.2586,
			.9935,
			.1079,
			.1237,
			.3953,
			-.1904,
			-.4965,
			.3561,
			-.08861,
			-.01063,
			-.3583,
			-.01875,
			.3754,
			-.4486,
			-.1094,
			.04798,
			1.129,
			-.2526,
			-.3686,
			.2837,
			.2415,
			-.09586,
			-.2571,
			-.2985,
			-.1244,
			-.03865,
			.09553,
			.073,
			.01075,
			-.04888,
			-.1282,
			-.3432,
			.16,
			-.05471,
			.04602,
			-.3074,
			.3055,
			.05906,
			.2171,
			-.281,
			-.3572,
			-.1672,
			.01184,
			-.02462,
			-.0611,
			.01237,
			-.09499,
			-.06878,
			-.2375,
			-.1568,
			.08404,
			.01423,
			.06037,
			.2605,
			-.02429,
			.01603,
			.4559,
			-.09401,
			-.2001,
			-.05827,
			-.005452,
			-.4164,
			-.2708,
			-.2803,
			-.0861,
			-.3939,
			-.007402,
			-.03695,
			-.08912,
			-.1618,
			.4621,
			.2842,
			.2044,
			-.08209,
			.04929,
			.1278,
			-.06573,
			-.1145,
			.02846,
			.1015,
			-.186,
			.1832,
			-.1486,
			.1185,
			-.05424,
			.03189,
			-.01386,
			.2603,
			.1941,
			-.1328,
			.02894,
			-.07934,
			-.004141,
			-.1932,
			-.129,
			-.06725,
			.04935,
			.262,
			-.08647,
			.1593,
			-.01371,
			-.2402,
			.08787,
			-.07238,
			.03754,
			.2047,
			.0873,
			-.1411,
			.1737,
			.03121,
			-.4656,
			-.2327,
			-.04027,
			.108,
			.3344,
			-.2091,
			-.05524,
			.05232,
			-.07381,
			-.252,
			.04314,
			.2288,
			-.2175,
			-.2268,
			.02788,
			-.07644,
			-.04069,
			.1895,
			-.1525,
			-.3195,
			-.1638,
			-.1735,
			-.001757,
			-.08376,
			-.06752,
			.05329,
			-.0181,
			.008586,
			-.1252,
			.05533,
			.09253,
			-.01798,
			.2933,
			.08626,
			.1431,
			.1634,
			.01843,
			-.03225,
			.07352,
			.04297,
			.1457,
			-.1809,
			-.3316,
			-.007897,
			-.1091,
			.206,
			.3211,
			.09461,
			-.3757,
			.01329,
			.07924,
			.03081,
			.2295,
			.2218,
			.1012,
			-.1352,
			.09891,
			.03583,
			.06918,
			-.155,
			.2021,
			-.05784,
			-.05894,
			.1169,
			-.127,
			.3875,
			-.1434,
			.114,
			.1575,
			-.003183,
			-.01299,
			.1581,
			-.02918,
			-.08597,
			-.02834,
			-.2372,
			-.2703,
			-.03922,
			.02296,
			-.01741,
			-.2292,
			-.02643,
			.04128,
			-.007615,
			.2752,
			-.03587,
			-.06125,
			-.2149,
			-.09071,
			.09718,
			.1115,
			-.1382,
			.05982,
			-.1268,
			-.002113,
			.07466,
			.02274,
			.3144,
			-.1177,
			.07382,
			.1151,
			.1333,
			-.06452,
			-.07192,
			.02935,
			-.3185,
			.07991,
			-.1015,
			-.05518,
			.01426,
			-.2226,
			.04617,
			.01804,
			-.127,
			-.1712,
			.04771,
			.1232,
			-.1796,
			-.01416,
			-.02049,
			.04368,
			.09636,
			-.02921,
			.05758,
			.005022,
			-.07073,
			.002086,
			-.02128,
			-.04198,
			-.04682,
			-.0216,
			-.07322,
			.05419,
			-.00897,
			-.02597,
			-.1511,
			-.1975,
			-.02609,
			.07878,
			.005171,
			.1449,
			-.05945,
			.2283,
			.1988,
			-.1447,
			-.1406,
			.1879,
			-.1656,
			-.1133,
			-.05276,
			-.05861,
			-.2931,
			.01405,
			.01488,
			.06381,
			-.07861,
			.1213,
			.04926,
			-.04284,
			-.2168,
			-.4468,
			.1472,
			-.03528,
			-.1811,
			.03426,
			-.0943,
			.1041,
			-.2527,
			-.01068,
			-.003609,
			-.07814,
			-.2144,
			-.1837,
			-.05822,
			.08643,
			.05551,
			-.224,
			-.02674,
			-.2085,
			-.07391,
			.09777,
			.0728,
			.2539,
			.0759,
			-.07752,
			.2618,
			.3559,
			.1238,
			-.2993,
			-.04921,
			-.1207,
			.07522,
			.2285,
			.3027,
			-.07745,
			-.01115,
			.1156,
			.2874,
			-.1099,
			-.3391,
			.02254,
			.007299,
			.1447,
			.3027,
			-.4005,
			-.2597,
			-.2895,
			-.2828,
			-.1415,
			.2197,
			-.1345,
			-.04225,
			.05325,
			.06372,
			-.1587,
			.0722,
			.08589,
			.07541,
			-.2004,
			.1701,
			723e-6,
			.03446,
			.1231,
			.239,
			.02409,
			.301,
			.09585,
			-.108,
			.34,
			-.1817,
			-.223,
			.06625,
			.05617,
			.0199,
			-.0718,
			-.04451,
			-.131,
			.001302,
			-.06445,
			-.08832,
			-.2265,
			-.1308,
			-.1674,
			-.02872,
			-.03674,
			-.03198,
			-.08496,
			-.1478,
			.1577,
			.1027,
			-.2194,
			.2499,
			-.0129,
			-.09798,
			-.1284,
			.04618,
			.174,
			.3223,
			.03953,
			-.2002,
			.6452,
			-.06585,
			-.03652,
			.03337,
			.1446,
			.2535,
			-.3463,
			-.09059,
			.01325,
			.08908,
			-.0178,
			.02878,
			-.4467,
			-.04913,
			-.3168,
			-.1397,
			.1322,
			-.04286,
			.1566,
			-.2531,
			-.04094,
			.07934,
			-.3078,
			-.1239,
			.08839,
			.01744,
			-.1396,
			.2641,
			.01082,
			.2865,
			-.0256,
			-.1071,
			.4305,
			.09433,
			.2117,
			-.156,
			.07889,
			-.05106,
			.01825,
			-.3018,
			-.01028,
			.2989,
			-.1866,
			.0683,
			-.4199,
			-.0415,
			-.2299,
			-.2989,
			.03667,
			.0278,
			.209,
			-.128,
			.0505,
			-.08334,
			-.1163,
			.1108,
			.08053,
			.06624,
			.001084,
			-.04209,
			-.287,
			.3192,
			.09386,
			-.08879,
			.2294,
			.01822,
			.04425,
			.09719,
			.03188,
			-.06326,
			.05524,
			-.1326,
			.02,
			.03358,
			-.05011,
			-.07836,
			.15,
			-.3514,
			.3015,
			.2414,
			.09663,
			.003098,
			.02813,
			.002727,
			.04738,
			-.1334,
			.1308,
			-.2724,
			.2288,
			.3289,
			.0362,
			-.04233,
			.2064,
			-.09842,
			.01838,
			.1122,
			.05682,
			-.3016,
			-.06486,
			-.2631,
			.02544,
			-.1767,
			.04153,
			.09694,
			-.3739,
			-.069,
			-.06368,
			.02183,
			-.07138,
			.2746,
			.1139,
			.1493,
			.01568,
			.01938,
			-.09002,
			.1175,
			-.1118,
			-.2282,
			-.1023,
			.02636,
			.01166,
			-.07376,
			.04374,
			.03358,
			-.3765,
			-.1107,
			-.07548,
			.04913,
			.03206,
			-.3078,
			.0895,
			-.03595,
			.07953,
			-.01841,
			-.2098,
			.1684,
			-.05432,
			-.08344,
			-.05351,
			-.02714,
			-.04689,
			-.1177,
			.1793,
			.2413,
			-.05235,
			-.1167,
			.04312,
			.0663,
			.02615,
			.4239,
			.03807,
			.09131,
			-.2409,
			-.1177,
			.08501,
			.00675,
			.06425,
			-.05465,
			-.1567,
			-.08311,
			.2302,
			-.001119,
			-.04733,
			-.2858,
			.03924,
			.02005,
			-.1085,
			.166,
			-.1641,
			.2873,
			-.07921,
			-.03124,
			-.2687,
			-.002029,
			-.1044,
			.2478,
			-.01675,
			-.06497,
			.09852,
			.002285,
			.03212,
			.1922,
			.008183,
			.006057,
			-8764e-7,
			-.1372,
			-.06419,
			.09599,
			-.07574,
			.09808,
			.04993,
			-.1139,
			.3543,
			.07483,
			-.03612,
			-.1607,
			-.005152,
			.1257,
			-.04871,
			-.08746,
			.1427,
			-.1621,
			-.116,
			-.09453,
			-.1374,
			-.02095,
			.01469,
			-.1895,
			.05367,
			.0992,
			.005475,
			-.01082,
			.05945,
			.002377,
			-.02621,
			.01065,
			-.01548,
			.165,
			-.3249,
			-.07246,
			.01112,
			-.09968,
			.08928,
			-.08346,
			.1259,
			.07344,
			.03452,
			-.2003,
			-.05553,
			-.3293,
			.1735,
			.05858,
			-.005208,
			.1162,
			-.05279,
			.1185,
			.1061,
			-.1083,
			.2543,
			.09597,
			.1755,
			-.0421,
			-.1883,
			.1771,
			.01235,
			-.1587,
			.029,
			.121,
			.02371,
			.367,
			.1468,
			-.03228,
			.4777,
			.02959,
			-.1305,
			-.002312,
			.1065,
			-.2134,
			-.2115,
			-.08674,
			-.006334,
			-.006143,
			.03459,
			.1777,
			-.2148,
			-.1035,
			-.03281,
			-.108,
			.02103,
			.1925,
			-.09563,
			.3105,
			.101,
			-.02951,
			.1219,
			-.09435,
			.1205,
			-.2177,
			.04231,
			-.2387,
			-.03113,
			-.3423,
			.1135,
			-.01318,
			-.2203,
			-.06141,
			-.00102,
			-.09653,
			.2177,
			-.1791,
			-.08474,
			.1011,
			.06651,
			.062,
			-.1864,
			.08348,
			.1794,
			.1149,
			-.05662,
			-.03013,
			-.4083,
			.1021,
			-.06568,
			.2897,
			.04369,
			-.004786,
			-.07036,
			.09131,
			.1888,
			-.03994,
			-.05699,
			-.0295,
			.01251,
			-.08089,
			-.3755,
			.05869,
			-.4422,
			-.01202,
			-.1497,
			-.1154,
			.0765,
			-.07331,
			-.07651,
			.101,
			.03581,
			-.118,
			-.2987,
			.06652,
			.106,
			-.1132,
			-.07012,
			.06148,
			-.09302,
			-.006961,
			.2813,
			-.1053,
			.03462,
			.159,
			-.05715,
			-.1526,
			.00374,
			.04023,
			.1219,
			-.0302,
			.05568,
			.1231,
			-.0327,
			.1288,
			-.02519,
			.1118,
			-.003479,
			-.09565,
			-.09699,
			.06062,
			.03614,
			.003783,
			.08745,
			-.247,
			-.07386,
			.035,
			-.159,
			-.07729,
			.09334,
			-.09556,
			-.006129,
			-.04367,
			.06337,
			.1609,
			.0436,
			.01662,
			-.04487,
			-.01325,
			.09063,
			-.09784,
			-.04027,
			-.05173,
			.01231,
			.05734,
			-.01823,
			-.03057,
			-.01826,
			-.01622,
			.02753,
			-.095,
			.09409,
			.1696,
			-.1898,
			-.08134,
			-.04463,
			-.05468,
			.06748,
			.005796,
			.05905,
			.1701,
			.1439,
			.1083,
			-.3117,
			.02128,
			-.2493,
			.1001,
			.02423,
			.2456,
			.05608,
			-.2343,
			.02196,
			.2466,
			.1131,
			-.004609,
			.1445,
			-.01837,
			-.2982,
			-.303,
			.1395,
			.4358,
			-.02177,
			-.08797,
			-.1026,
			.004682,
			.06627,
			-.1801,
			.184,
			-.03838,
			-.0608,
			.3032,
			.307,
			-.05852,
			-.1291,
			-.1074,
			-.09722,
			.1367,
			.2822,
			-.1414,
			-.1686,
			-.3025,
			-.1044,
			-.0641,
			.3313,
			.1623,
			.03227,
			-.1206,
			.05507,
			.06171,
			.02145,
			.06627,
			-.354,
			-.0221,
			.03613,
			.03804,
			-.03785,
			-.07878,
			-.2082,
			.1524,
			.04964,
			.01589,
			.06527,
			.1752,
			.1235,
			.05543,
			-.07179,
			-.1209,
			.063,
			.05069,
			.1939,
			.03456,
			-.1232,
			-.1001,
			.04327,
			.02105,
			.001724,
			.0291,
			-.01246,
			-.1548,
			.06859,
			-.04411,
			.1594,
			-.03267,
			.02349,
			.0426,
			-.02802,
			-.02221,
			-.09827,
			-.02025,
			-.2874,
			.0456,
			.04591,
			-.04433,
			-.1332,
			-.02454
		],
		[
			-.2674,
			-.1074,
			.2959,
			.04385,
			-.02823,
			.1332,
			.339,
			.05952,
			-.1845,
			-.1099,
			.1092,
			-.08015,
			.5483,
			-.01924,
			.06085,
			.2065,
			-.01072,
			.195,
			-.59,
			.07933,
			-.03439,
			.208,
			.03977,
			.5489,
			.1539,
			.05514,
			.05062,
			-.1675,
			.09097,
			-.1226,
			.07201,
			.3507,
			-.1973,
			.4823,
			-.4284,
			-.2454,
			-.2237,
			.1149,
			-.3854,
			.01588,
			.4721,
			.5502,
			-.06337,
			-.3799,
			.3736,
			-.6084,
			-.3966,
			-.1326,
			.5038,
			.4269,
			-.6842,
			-.1045,
			.4935,
			.1906,
			.05908,
			.08725,
			-.202,
			.2616,
			-.07051,
			-.3183,
			-.4033,
			.09928,
			.3287,
			-.2539,
			.2432,
			.2158,
			.2491,
			-.004131,
			.366,
			.4116,
			.08441,
			.09315,
			-.4904,
			-.3052,
			.04257,
			.2898,
			.1834,
			-.5336,
			.04637,
			-.398,
			.1517,
			-.01183,
			-.04429,
			.3845,
			.5451,
			-.4292,
			.05372,
			.3706,
			-.2369,
			.1012,
			-.2139,
			-.03573,
			-.1549,
			.03358,
			-.3956,
			-.4055,
			.06655,
			-.1687,
			-.3444,
			.4637,
			-.1272,
			.09115,
			-.2976,
			.05955,
			-.1966,
			.268,
			.2708,
			-.3822,
			-.176,
			.1886,
			-.2325,
			-.09596,
			.3397,
			.09657,
			.41,
			-.06079,
			.4004,
			-.3916,
			.0102,
			-.3781,
			.1796,
			.07542,
			-.4198,
			-.1694,
			-.06928,
			.002739,
			.3681,
			.2939,
			-.2373,
			.331,
			.3444,
			-.189,
			-.4394,
			.1731,
			-.09147,
			-.2199,
			.509,
			.2027,
			.2349,
			.2612,
			.4195,
			-.06275,
			.1119,
			.06496,
			.2557,
			.1064,
			-.1632,
			-.4356,
			.1947,
			-.2618,
			-.08982,
			-.1703,
			.1925,
			-.2702,
			-.1199,
			.01578,
			.02437,
			-.1486,
			.2623,
			.1342,
			-.0289,
			-.5705,
			-.2702,
			-.02348,
			.3543,
			.2085,
			-.02949,
			.1497,
			-.277,
			-.1613,
			.5235,
			.01627,
			-.2131,
			.05087,
			.04837,
			-.1752,
			.2184,
			-.1618,
			-.1489,
			-.08966,
			.1913,
			-.07005,
			-.2079,
			.4779,
			-.2815,
			-.2847,
			-.1513,
			.1884,
			.2628,
			.5508,
			-.02161,
			.07579,
			.3066,
			.13,
			-.3605,
			-.2808,
			.02753,
			.3566,
			-.1096,
			.2377,
			-.1916,
			.4082,
			-.2518,
			-.1351,
			-.3932,
			.381,
			.3064,
			-.3983,
			.177,
			-.3288,
			.3436,
			-.1076,
			.3903,
			.02131,
			.3952,
			.1084,
			-.3691,
			-.2716,
			-.04325,
			.05718,
			-.2977,
			.108,
			-.01926,
			-.01514,
			.1747,
			.2254,
			-.08809,
			.247,
			.2767,
			-.09614,
			-.4111,
			.1104,
			.07385,
			.3185,
			-.4794,
			-.1507,
			.2032,
			-.09602,
			-.06612,
			-.03635,
			.5022,
			.5066,
			-.3776,
			-.5182,
			.4262,
			-.07202,
			.4064,
			-.1818,
			-.03009,
			.1444,
			.4493,
			-.4928,
			-.214,
			.301,
			.2117,
			-.1238,
			.1444,
			.1421,
			.3178,
			-.03651,
			.1424,
			.09481,
			.3683,
			-.1529,
			-.03273,
			-.005404,
			-.234,
			-.5385,
			.03421,
			.3032,
			-.121,
			-.4414,
			.2637,
			-.1182,
			.09304,
			.4815,
			.1314,
			-.09671,
			.137,
			.1103,
			.02687,
			-.07152,
			-.1253,
			.2377,
			-.2258,
			.08131,
			.3669,
			.385,
			-.3288,
			-.2378,
			.1384,
			-.532,
			.5588,
			.009793,
			.04575,
			-.162,
			.2831,
			-.04826,
			-.1781,
			.1175,
			-.0752,
			-.05444,
			.4242,
			.4458,
			-.2124,
			-.4743,
			-.1672,
			.2419,
			-.1922,
			.1672,
			.5811,
			-.2381,
			.02645,
			.07761,
			-.2649,
			.1626,
			.1332,
			.06764,
			-.4013,
			.2794,
			.05354,
			.5072,
			.02639,
			-.5333,
			-.3702,
			.1767,
			-.2258,
			-.1215,
			.1095,
			-.04327,
			.2542,
			-.2999,
			.1078,
			.1731,
			.2339,
			-.103,
			.2582,
			-.1723,
			-.2915,
			.3413,
			-.4248,
			.3204,
			.09599,
			.1867,
			-.4951,
			-.1046,
			-.06086,
			.1884,
			.1276,
			.2191,
			.1621,
			-.4167,
			.2442,
			.4313,
			.1767,
			-.075,
			.1897,
			-.1384,
			-.5146,
			.017,
			.2637,
			.412,
			-.2578,
			-.6059,
			-.003386,
			.1638,
			.254,
			.02668,
			.1161,
			-.02176,
			-.2909,
			.1507,
			-.4531,
			.2722,
			.2526,
			-.2922,
			-.3026,
			-.2008,
			.4667,
			.1373,
			.3108,
			.2303,
			.4313,
			.4031,
			-.1734,
			.4715,
			.003299,
			-.5794,
			.4038,
			-.03829,
			.2418,
			.3256,
			.04562,
			.4044,
			-.2587,
			-.5544,
			-.1095,
			-.162,
			.5222,
			-.4267,
			-.1631,
			-.1719,
			.2398,
			.2226,
			-.1186,
			.08783,
			.4177,
			.2466,
			.22,
			-.5664,
			.0958,
			.5399,
			-.2629,
			-.4175,
			-.3372,
			-.1298,
			.2732,
			-.08353,
			-.09893,
			.2265,
			-.106,
			-.1067,
			-.3755,
			.3072,
			-.04463,
			.09588,
			-.06273,
			-.1827,
			-.2528,
			-.2727,
			-.5211,
			-.3686,
			-.2855,
			-.208,
			.1973,
			-.1347,
			.1248,
			-.4488,
			.4951,
			-.2834,
			.1066,
			-.4287,
			-.2035,
			.16,
			.3614,
			.02342,
			.09652,
			.4259,
			-.3025,
			.1962,
			-.1851,
			-.01041,
			-.3183,
			.2011,
			.1242,
			.1059,
			-.1371,
			.08872,
			-.4376,
			-.06441,
			.509,
			-.4539,
			-.04799,
			-.05337,
			.3122,
			-.3389,
			.1147,
			.2262,
			-.4177,
			.5022,
			.1766,
			.08406,
			.0012,
			-.4149,
			.006113,
			5404e-7,
			-.03232,
			.1881,
			-.02875,
			-.2161,
			-.01931,
			.3747,
			.1139,
			-.1789,
			-.1941,
			-.1685,
			.02874,
			-.1252,
			-.04493,
			-.07433,
			.2211,
			.05525,
			-.1404,
			.02707,
			.02052,
			.1017,
			-.01651,
			-.2602,
			-.1693,
			.6031,
			-.3938,
			.07859,
			.2912,
			.099,
			-.05391,
			-.1725,
			.3798,
			.4255,
			.005658,
			-.015,
			-.08547,
			-.2214,
			-.1844,
			.279,
			.2785,
			.1038,
			.3087,
			.1538,
			-.326,
			-.1375,
			.1919,
			-.05353,
			-.1878,
			-.02243,
			.4223,
			.0559,
			-.1069,
			-.2078,
			-.1093,
			-.4088,
			-.09349,
			.01107,
			.1799,
			-.09304,
			.6583,
			-.5244,
			.3424,
			-.2119,
			-.05279,
			.3165,
			.09798,
			-.2308,
			.09448,
			.5379,
			-.3886,
			-.1617,
			-.292,
			.6931,
			-.122,
			.07311,
			.0571,
			-.05013,
			-.426,
			-.3184,
			.3019,
			.61,
			-.05572,
			-.3508,
			-.4389,
			-.2067,
			-.02384,
			-.04983,
			-.5456,
			.1759,
			.1286,
			.3863,
			-.481,
			.2934,
			-.343,
			.2059,
			-.5266,
			-.2394,
			-.003454,
			.005977,
			-.5628,
			-.2201,
			-.09452,
			-.2749,
			.07622,
			.3397,
			-.1472,
			-.02803,
			.04631,
			.1671,
			-.1121,
			-.01904,
			.4156,
			-.2154,
			.178,
			-.2069,
			.04112,
			-.4497,
			.5201,
			-.1147,
			.1189,
			-.1611,
			.3526,
			.1466,
			-.5624,
			-.1499,
			-.2916,
			-.17,
			.1402,
			.2537,
			-.2549,
			-.1171,
			.1853,
			-.4009,
			.1267,
			.2,
			.168,
			.3045,
			.4502,
			-.04768,
			-.07198,
			.3538,
			-.3849,
			.3489,
			-.2311,
			-.01925,
			-.3828,
			-.191,
			-.1508,
			.09677,
			.08213,
			-.01627,
			.4563,
			.5022,
			-.1007,
			.172,
			.0504,
			-.1479,
			.3014,
			-.04175,
			.129,
			.1208,
			.1794,
			-.3745,
			-.3808,
			.3523,
			-.3099,
			.1477,
			-.5392,
			.08198,
			-.2161,
			-.4548,
			-.3785,
			-.3198,
			-.1336,
			177e-6,
			.3759,
			.3521,
			-.1487,
			-.2501,
			-.4216,
			-.2798,
			-.09735,
			.1932,
			.004887,
			.3199,
			.2477,
			.1328,
			-.04455,
			-.2644,
			.117,
			-.2686,
			-.1164,
			-.3187,
			.2192,
			.01767,
			-.2192,
			-.2498,
			-.5147,
			-.09752,
			-.2344,
			-.396,
			.01187,
			.3014,
			.4605,
			.1698,
			-.00634,
			-.2911,
			-.0133,
			.00433,
			-.4901,
			.4151,
			.3565,
			.338,
			.1024,
			.01258,
			.3234,
			.1274,
			-.01789,
			.01827,
			.761,
			.5395,
			-.2861,
			-.21,
			-.04334,
			.1887,
			.1703,
			.1462,
			-.0282,
			-.03746,
			.4619,
			-.2798,
			.2477,
			.01304,
			.02537,
			-.3017,
			.03268,
			.507,
			-.1778,
			.1188,
			-.2318,
			.5318,
			-.5331,
			.2992,
			-.04673,
			-.136,
			.1015,
			.09985,
			.08125,
			-.3335,
			-.0668,
			-.05685,
			.2069,
			.2553,
			-.3033,
			-.1363,
			-.2262,
			.2391,
			-.2545,
			.06117,
			.1417,
			.203,
			.3644,
			.4354,
			.06459,
			.04739,
			.1277,
			-.2022,
			.2249,
			-.01835,
			.0324,
			-.1771,
			.1145,
			.2742,
			.2443,
			-.4866,
			-.003153,
			-.4411,
			.01015,
			-.006085,
			.06001,
			.3254,
			-.07713,
			.1232,
			-.09553,
			.1878,
			-.2995,
			.1366,
			-.02134,
			-.1039,
			-.04111,
			-.008379,
			-.2568,
			-.2716
		],
		[
			-.04733,
			-.03228,
			-.03492,
			-.5333,
			-.4621,
			-.7237,
			.02606,
			-.3378,
			-.8558,
			-.5744,
			-.404,
			-.3607,
			-.3299,
			-.7001,
			-.1104,
			-.8283,
			-.3516,
			.7661,
			.3387,
			.2557,
			.5342,
			.307,
			.7627,
			.7056,
			.4824,
			.6458,
			.3745,
			.2655,
			.5693,
			.4075,
			.5586,
			-.05467,
			-.4502,
			.04891,
			.1755,
			-.4559,
			-.3,
			-.6521,
			-.7577,
			-.2077,
			-.0611,
			-.176,
			.2532,
			.6697,
			.2142,
			.02656,
			.05585,
			.3446,
			-.2946,
			-.0637,
			.5325,
			-.5615,
			-.1526,
			.4369,
			-.3452,
			-.2538,
			-.1795,
			.1508,
			.5272,
			.2584,
			.5354,
			.735,
			.4336,
			.2804,
			-.009483,
			-.4078,
			-.313,
			-.299,
			-.4703,
			-.5119,
			-.6842,
			-.1285,
			-.3307,
			.08857,
			.1087,
			.5439,
			.5346,
			.2595,
			.3253,
			.6802,
			.5275,
			.0136,
			.03955,
			.2405,
			-.3007,
			-.2786,
			-.4826,
			.09003,
			-.249,
			-.6892,
			.2883,
			.1282,
			.07617,
			.3515,
			-.108,
			-.4535,
			.5052,
			.2567,
			.01536,
			.09688,
			-.2636,
			-.1695,
			.4288,
			.417,
			.3876,
			.4298,
			.5193,
			.7964,
			.2189,
			.3354,
			.2527,
			.329,
			.375,
			.4674,
			.8671,
			.4901,
			.4062,
			-.6454,
			-.6459,
			-.4471,
			-.05932,
			-.1677,
			-.3957,
			-.2955,
			-.5446,
			-.8994,
			-.6195,
			-.1684,
			-.6474,
			.3625,
			.04333,
			.3336,
			-.1196,
			.4631,
			.2921,
			.1169,
			.1969,
			.2083,
			.1459,
			.2643,
			.8185,
			.24,
			.4699,
			.8906,
			-.2008,
			-.02991,
			-.1803,
			-.7278,
			-.6691,
			-.5992,
			-.3747,
			-.2222,
			-.3498,
			-.123,
			-.03416,
			-.04378,
			-.3252,
			-.5819,
			-.7161,
			-.4187,
			-.2467,
			-.4989,
			.03141,
			-.1786,
			-.08685,
			-.2407,
			-1.015,
			-.2631,
			-.4883,
			-1.088,
			-.638,
			-.09044,
			-.345,
			-.1461,
			-.358,
			-.005079,
			.5167,
			.06323,
			.3556,
			.5772,
			.08562,
			-.01293,
			-.2649,
			.07442,
			-.2146,
			-.2439,
			-.3956,
			-.5587,
			-.6447,
			-.3331,
			-.231,
			.1188,
			.4655,
			.8356,
			-.02351,
			.5552,
			.1508,
			.2531,
			-.5626,
			-.1364,
			-.04778,
			-.4537,
			.2719,
			.3938,
			.002364,
			.5063,
			.2251,
			-.4998,
			-.09261,
			.404,
			-.6294,
			-.01673,
			.4499,
			-.475,
			-.01668,
			.3416
		]
	],
	"biases": [
		[
			.4394,
			-.6378,
			.372,
			-.5905,
			-.2019,
			.7533,
			.2986,
			.3721,
			.5236,
			-.3064,
			.3423,
			.3993,
			.5244,
			-.3037,
			-.2134,
			.3802,
			.3943,
			-.3766,
			.3031,
			.207,
			.2131,
			-.3752,
			.3151,
			-.6313,
			-.2993,
			-.6037,
			-.4313,
			-.2889,
			.4759,
			.5434,
			.2134,
			-.3653
		],
		[
			-.05164,
			.2987,
			-.3476,
			-.3288,
			.3917,
			.333,
			.199,
			-.1208,
			.1971,
			-.1572,
			-.2756,
			-.1525,
			-.2274,
			.3052,
			.3546,
			.05501,
			.1921,
			-.22,
			.343,
			.2282,
			-.2775,
			.5205,
			.4035,
			.3668
		],
		[
			1.764,
			1.7,
			1.867,
			2.803,
			3.173,
			3.257,
			4.811,
			5.132,
			5.293
		]
	]
}, {
	"sizes": [
		58,
		32,
		24,
		9
	],
	"mean": [
		4.594,
		1.328,
		.4877,
		.4722,
		.4301,
		.9336,
		.6359,
		.4638,
		.3186,
		.1977,
		.5273,
		1.148,
		.3879,
		.08585,
		.1904,
		.7087,
		.7287,
		.4368,
		.8851,
		.7701,
		.1538,
		.6043,
		.6983,
		.2302,
		.1964,
		.1606,
		.1369,
		.704,
		.5941,
		.8052,
		.1413,
		.08765,
		.1055,
		.8782,
		1.107,
		.4461,
		.08104,
		.208,
		.3574,
		.4519,
		.5677,
		.2653,
		.1763,
		.1373,
		.1102,
		.179,
		.1234,
		.03954,
		.02869,
		.02919,
		.2162,
		.1419,
		.04148,
		.001522,
		.2985,
		.1391,
		.4583,
		.1156
	],
	"spread": [
		3.159,
		1.23,
		.6903,
		.5943,
		.4532,
		.8103,
		.7611,
		.6821,
		.5875,
		.478,
		.5367,
		.6029,
		.3804,
		.7721,
		.9451,
		.8623,
		.7057,
		.4857,
		.3279,
		.3178,
		.7423,
		.4805,
		.5953,
		.3516,
		.3154,
		.2936,
		.2613,
		.7216,
		.5946,
		.3971,
		.8122,
		.9811,
		.8948,
		.3301,
		1.238,
		.4981,
		1.156,
		1.293,
		.9891,
		.9871,
		1.111,
		.5667,
		.4516,
		.3901,
		.3427,
		.3844,
		.3298,
		.1959,
		.1679,
		.1693,
		.4127,
		.3499,
		.2004,
		.03998,
		.4381,
		.484,
		.4993,
		.1935
	],
	"weights": [
		[
			-.08534,
			-.01364,
			-.4046,
			.02148,
			.08545,
			.07882,
			.1709,
			.1304,
			-.1245,
			-.1715,
			-.05824,
			.1985,
			-.3417,
			.1316,
			.2238,
			.2052,
			-.4409,
			.2009,
			.3428,
			-.3546,
			.3214,
			-.2674,
			-.3589,
			.5608,
			.4071,
			-.02945,
			.3435,
			.09988,
			-.01435,
			-.01315,
			.4069,
			.252,
			-.1983,
			.1248,
			.0339,
			.2128,
			.1863,
			.1607,
			-.04439,
			-.1911,
			.08296,
			.2239,
			-.184,
			-.1036,
			.03679,
			.2135,
			-.3543,
			-.0476,
			-.03973,
			.0464,
			.1376,
			-.09519,
			.004326,
			-.1403,
			-.1892,
			.01635,
			.2165,
			.04542,
			-.0843,
			.008002,
			.06703,
			.2532,
			.1831,
			-.03463,
			.02376,
			.07372,
			.02307,
			-.1406,
			-.06817,
			-.02522,
			-.116,
			.02585,
			.1295,
			-.02496,
			-.05969,
			-.02508,
			-.06331,
			.006987,
			-.2697,
			-.1339,
			.4071,
			-.1044,
			-.08152,
			-.07379,
			.001992,
			.1976,
			.2148,
			.03507,
			.09714,
			.5563,
			-.06239,
			.1043,
			-.2472,
			-.08999,
			.03013,
			-.106,
			.04712,
			-.06949,
			.01824,
			-.07944,
			-.03683,
			.01096,
			-.1209,
			-.01659,
			.1718,
			.05762,
			-.1055,
			.07848,
			-.2638,
			-8914e-7,
			.1966,
			-.1807,
			.1509,
			-.0173,
			-.2095,
			-.07491,
			-.04261,
			-.1612,
			.1382,
			.03453,
			-.1927,
			.5274,
			.0047,
			.03734,
			.01524,
			.02861,
			-.2678,
			-.1071,
			-.04731,
			-.304,
			-.03239,
			-.06838,
			.01556,
			-.05734,
			-.3121,
			.07619,
			.1166,
			-.07191,
			-.08128,
			-.05331,
			-.0473,
			-.08554,
			-.1621,
			-.1851,
			.1953,
			.05472,
			-.0916,
			.05702,
			.00806,
			-.4,
			.125,
			-.02002,
			-.08386,
			.2769,
			.1167,
			-.2439,
			-.01628,
			.08807,
			-.02604,
			-.06356,
			-.1971,
			.2289,
			-.3468,
			-.2302,
			.02592,
			-.06582,
			-.1184,
			-.1557,
			-.05598,
			-.005088,
			.1754,
			.1227,
			-.1066,
			.09099,
			-.08968,
			-.05734,
			-.3769,
			-.1176,
			-.2213,
			.2644,
			-.3026,
			-.176,
			-.3512,
			.07596,
			.1621,
			-.2908,
			.02129,
			-.1129,
			.2105,
			-.09553,
			.4301,
			.02209,
			.1231,
			.2891,
			.0539,
			.1001,
			.04153,
			.0391,
			-.2119,
			-.126,
			-8623e-7,
			-.04298,
			-.1705,
			-.009874,
			-.0305,
			-.1508,
			-.2059,
			.05312,
			-.03226,
			-.1762,
			-.1252,
			.04593,
			.02307,
			-.01774,
			-.04777,
			.01773,
			-.0468,
			.1861,
			-.01695,
			.3089,
			-.2332,
			.2603,
			.06486,
			-.2664,
			-.01083,
			.2259,
			-.05203,
			-.02411,
			-.09589,
			.08349,
			-.1193,
			.1609,
			.07511,
			.07057,
			.1149,
			.09215,
			-.07098,
			-.219,
			.002104,
			-.3204,
			-.07849,
			.2074,
			.2807,
			.1382,
			-.07376,
			-.2485,
			-.08754,
			-.2006,
			-.1261,
			.1447,
			-.1476,
			.0901,
			.03286,
			.08804,
			-.03447,
			-.158,
			-.2128,
			.08238,
			-.2971,
			.1287,
			-.08271,
			-.0249,
			.1245,
			.04826,
			.1536,
			.0845,
			.02671,
			.007423,
			-.1141,
			.1302,
			.193,
			-.02491,
			.05679,
			-.2243,
			.458,
			.09395,
			-.09497,
			-.2261,
			.054,
			-.1175,
			-.07457,
			.1375,
			-.238,
			-.006254,
			.05955,
			-.02236,
			.02289,
			.125,
			-.01876,
			.1513,
			.07128,
			-.1119,
			.1458,
			-.03611,
			-.02289,
			.2226,
			.08107,
			.1945,
			.02598,
			.1135,
			-.1396,
			.265,
			-.1539,
			-.1256,
			.02738,
			.2264,
			-.251,
			-.2746,
			-.3023,
			-.4152,
			.2379,
			-.2071,
			.09862,
			-.04376,
			-.03567,
			-.193,
			.08792,
			.1507,
			-.2445,
			.1616,
			.1591,
			-.005466,
			.1481,
			.001828,
			-.1803,
			.05115,
			.2916,
			-.2619,
			-.1762,
			.06812,
			.1142,
			-.06025,
			-.03562,
			-.04901,
			-.3428,
			-.07877,
			.09213,
			-.0915,
			-.09808,
			.2378,
			-.07695,
			.04915,
			.3166,
			-.02108,
			.306,
			.2965,
			-.2123,
			.07217,
			-.01681,
			.05189,
			-.2823,
			.04244,
			.03556,
			-.2657,
			.3013,
			-.103,
			-.5384,
			.1482,
			-.09805,
			.2017,
			.2756,
			.1643,
			-.02,
			.2648,
			-.09713,
			-.1469,
			-.08085,
			.1944,
			.1381,
			.1713,
			-.03896,
			.001041,
			.1034,
			.1525,
			.04164,
			-.2561,
			.0826,
			.04322,
			.2607,
			.132,
			.2946,
			.372,
			-.03897,
			-.3727,
			.03007,
			.07695,
			.02523,
			-.08722,
			.1125,
			-.08263,
			.2695,
			-.2029,
			-.4612,
			-.03238,
			-.3309,
			-.00473,
			-.1176,
			-.1765,
			.1456,
			.01505,
			.1893,
			.07441,
			-.182,
			.06086,
			-.1642,
			-.07006,
			-.009015,
			.1548,
			.2502,
			-.2291,
			-.06149,
			-.242,
			.1656,
			-.1032,
			-.2362,
			.1321,
			-.08257,
			.005175,
			-.03213,
			.07684,
			.06448,
			-.07734,
			-.04117,
			.1201,
			-.1949,
			.08115,
			.06916,
			-.1956,
			.07887,
			-.02346,
			-.05517,
			.03242,
			-.09398,
			-.007048,
			.1794,
			.01938,
			.1373,
			.0374,
			-.2009,
			-.002243,
			-.1186,
			-.05009,
			-.05173,
			-.07022,
			-.0587,
			-.05027,
			.01536,
			-.1278,
			-.01213,
			.1495,
			.1727,
			.003743,
			.06259,
			.2134,
			.05344,
			.006618,
			-.2666,
			-.09782,
			.05508,
			-.2623,
			.2871,
			.02811,
			-.3308,
			.16,
			.01517,
			.1056,
			.03422,
			.0127,
			.06296,
			.2909,
			-.1139,
			.01318,
			.09491,
			.0599,
			-.03987,
			.09506,
			-.2405,
			.06379,
			-.1693,
			-.01305,
			-.04747,
			-.05967,
			-.07401,
			.1159,
			-.2266,
			.06262,
			-.4605,
			-.1103,
			.01278,
			.3003,
			-.02745,
			-.1332,
			-.04479,
			-.1205,
			-.2528,
			.07916,
			.1295,
			-.04179,
			.1693,
			.2942,
			.255,
			.03829,
			-.06924,
			-.1264,
			.1363,
			.04747,
			-.05117,
			.05139,
			.2743,
			.24,
			.2314,
			-.235,
			.1919,
			.1453,
			.2453,
			.0346,
			-.1706,
			.03754,
			.2314,
			-.1405,
			-.2198,
			.1889,
			.0645,
			-.1408,
			.1992,
			-.1084,
			-.1345,
			.02596,
			.03524,
			.1649,
			-.1623,
			.07798,
			.06574,
			.0969,
			.1806,
			.05133,
			.08627,
			.1604,
			-.01085,
			-.145,
			.1227,
			.2789,
			-.09868,
			-.03707,
			.2748,
			.2337,
			.3038,
			.07615,
			.09358,
			.03055,
			.479,
			-.3056,
			.00584,
			.0504,
			-.1482,
			-.003627,
			-.1582,
			-.2611,
			-.1209,
			-.1309,
			.02705,
			-.0653,
			-.1288,
			.1796,
			-.03695,
			.1429,
			.4426,
			-.1596,
			.09172,
			.1758,
			-.2071,
			-.154,
			.06368,
			-.08121,
			-.1518,
			.3506,
			.1224,
			-.0729,
			-.04872,
			.127,
			.4082,
			.09149,
			.04231,
			.208,
			.1381,
			.3005,
			-.04326,
			-.1293,
			.04002,
			-.2615,
			-.02192,
			-.07311,
			-.2939,
			-.2251,
			-.1048,
			.09049,
			.008452,
			.2237,
			.2587,
			-.1179,
			.07686,
			.3559,
			-.34,
			.1437,
			.185,
			-.05389,
			-.1131,
			.2446,
			.02082,
			-.02589,
			-.1925,
			.2563,
			.3282,
			.1941,
			-.1379,
			.2246,
			.1481,
			-.04859,
			-.2905,
			.2114,
			-.2752,
			.008161,
			.03186,
			.313,
			.09464,
			-.4076,
			-.01959,
			-.01451,
			.08168,
			-.02657,
			-.2104,
			.1427,
			-.1215,
			.01757,
			-.2953,
			.0251,
			.2504,
			-.2553,
			.07068,
			.2357,
			-.05232,
			.02705,
			-.07568,
			.1697,
			.02139,
			.1314,
			.3062,
			-.1506,
			.2321,
			.1967,
			-.09242,
			-.4837,
			.14,
			-.1192,
			-.146,
			-.0111,
			.1913,
			-.02295,
			.0977,
			6353e-7,
			.07462,
			-.06268,
			.2073,
			.03928,
			.02583,
			.4501,
			-.226,
			-.1171,
			-.07308,
			.07929,
			-.02676,
			-.07747,
			.3847,
			-.08914,
			-.1149,
			-.01293,
			.2872,
			.1653,
			-.04017,
			-.1793,
			-.1713,
			-.1535,
			.2699,
			.129,
			-.1419,
			.1223,
			-.1389,
			.1847,
			-.1552,
			.1067,
			-.06732,
			.09384,
			.2086,
			-.09636,
			-.2247,
			.402,
			.3437,
			.1723,
			.1719,
			.1587,
			.06491,
			-.01207,
			.1596,
			.2851,
			.1031,
			.04827,
			-.06112,
			.1276,
			.3284,
			.02276,
			.07226,
			-.01034,
			-.2603,
			-.1658,
			.02383,
			.08038,
			-.3157,
			.1954,
			.08815,
			.1847,
			-.1807,
			.1463,
			-.2028,
			.02177,
			.0847,
			-.1419,
			-.4162,
			.2045,
			-.02087,
			.03085,
			.1582,
			.02286,
			-.02647,
			.07485,
			-.03715,
			.0409,
			.1116,
			.05865,
			.1441,
			-.1791,
			-.008472,
			-.1238,
			-.07003,
			-.02648,
			-.07041,
			.06747,
			.01142,
			.08565,
			.2136,
			-.1729,
			-.03228,
			-.2024,
			.3701,
			-.1373,
			-.02027,
			.02619,
			.233,
			-.04092,
			.1619,
			.317,
			-.04609,
			.2685,
			-.07269,
			.4851,
			.01378,
			-.1095,
			.1698,
			-.03684,
			-.07697,
			.362,
			.1308,
			-.08889,
			-.1576,
			-.149,
			.1491,
			-.0897,
			-.02542,
			-4328e-7,
			-.07429,
			-.03947,
			.09047,
			-.366,
			.07517,
			-.07982,
			-.002146,
			.1673,
			.1574,
			-.06189,
			-.0588,
			.1409,
			-.09914,
			-.0197,
			-.04196,
			.1915,
			-.2653,
			.3528,
			.03818,
			.02183,
			-.05874,
			-.1694,
			-.03009,
			.01031,
			.04622,
			-.103,
			.03498,
			.04828,
			-.2771,
			.1163,
			.1615,
			.03362,
			.02602,
			-.004781,
			.01027,
			-.1328,
			.01049,
			-.006653,
			.1864,
			-.1434,
			.1416,
			.02969,
			.1025,
			-.1795,
			-.158,
			-.03228,
			.03274,
			.1479,
			.1001,
			.08356,
			-.03312,
			-.2121,
			.06782,
			-5664e-7,
			-.1214,
			-.07641,
			.0594,
			.04907,
			-.0355,
			-.2773,
			.1189,
			.01406,
			.1518,
			-.04974,
			-.01263,
			-.1441,
			.1461,
			-.07521,
			-.005655,
			-.07496,
			.1959,
			.07757,
			.04469,
			-.1606,
			.2273,
			-.008923,
			-.229,
			.03843,
			-.2111,
			.02426,
			-.2119,
			.1137,
			-.2413,
			.3159,
			.06288,
			.05058,
			.186,
			.00914,
			-.4048,
			.1171,
			-.1648,
			-.05426,
			.07814,
			-.3824,
			.2326,
			.05891,
			.1129,
			.08388,
			-.4017,
			-.04085,
			-.0478,
			.01304,
			.2851,
			-.05314,
			.1691,
			-.1616,
			.2032,
			-.327,
			-.1576,
			-.05885,
			-.1702,
			-.06528,
			-.2462,
			-.03539,
			-.09068,
			-.252,
			.2404,
			.3292,
			-.09406,
			.006622,
			-.02789,
			-.003328,
			-.1185,
			.09708,
			.04427,
			-.1219,
			-.02565,
			-.07144,
			-.09186,
			-.2111,
			.001748,
			-.1679,
			.0333,
			-.103,
			.01614,
			.2315,
			.1234,
			-.1655,
			.1997,
			-.07263,
			-.004771,
			-.1282,
			.1166,
			-.1063,
			-.06501,
			-.2168,
			-.1433,
			-.03239,
			-.1435,
			.4424,
			-.1387,
			.04347,
			-.1484,
			-.09032,
			.002073,
			.07589,
			.2064,
			-.1976,
			.07172,
			-.1635,
			-.0347,
			.04048,
			-.006633,
			.2744,
			-.2496,
			-.1822,
			.218,
			-.1414,
			-.1034,
			.08109,
			.3134,
			.1346,
			.03787,
			.1318,
			-.008577,
			-.1121,
			-.02806,
			.08347,
			-.1714,
			.07392,
			-.02826,
			-.09073,
			.2378,
			.2505,
			.1111,
			-.04749,
			-.04655,
			-.07261,
			-.19,
			-.2736,
			.07504,
			-.05852,
			.07552,
			-.09712,
			.1161,
			.07405,
			-.2282,
			-.3002,
			.3352,
			-.1548,
			.1782,
			.1802,
			.1675,
			.01527,
			-.09441,
			.3252,
			.3619,
			-.05013,
			-.1047,
			-.675,
			-.2131,
			.1742,
			-.01937,
			.02477,
			.07739,
			-.005931,
			.5428,
			-.06245,
			-.5219,
			.02965,
			-.09471,
			.006197,
			-.03054,
			-.4061,
			.3246,
			.06127,
			.06187,
			.2328,
			-.4093,
			-.1832,
			-.2297,
			-.4306,
			.3822,
			.2071,
			.3088,
			.04976,
			-.5947,
			.7102,
			-.1615,
			-.2358,
			.01707,
			.2252,
			-.00825,
			.1098,
			-.3138,
			.1805,
			.09167,
			.3073,
			.1582,
			-.05217,
			-.145,
			-.1144,
			-.5009,
			.2416,
			.2356,
			.001719,
			.3159,
			-.02274,
			.1954,
			-.163,
			-.02272,
			-.1302,
			-.02065,
			.02271,
			-.2546,
			-.05313,
			-.1736,
			-.1773,
			.0897,
			-.1292,
			-.06546,
			-.1957,
			-.06286,
			-.2811,
			-.1202,
			-.387,
			.1228,
			.3524,
			.2667,
			.1066,
			.08506,
			-.04809,
			-.2094,
			-.01565,
			.2265,
			.1335,
			.1707,
			-.09932,
			.06106,
			-.1677,
			-.2746,
			-.2309,
			.1909,
			-.1723,
			.02927,
			.1122,
			.05363,
			-.01562,
			-.5185,
			-.07011,
			.1419,
			-.1845,
			.1638,
			.1355,
			-.1112,
			-8596e-7,
			-5028e-7,
			.1672,
			-.186,
			-.194,
			-.251,
			.2968,
			.1009,
			-.002188,
			.1108,
			.1014,
			-.3219,
			-.0841,
			.115,
			.1203,
			.1572,
			-.01137,
			-.1254,
			.07904,
			.09409,
			.003949,
			-.1781,
			.01913,
			.06272,
			-.1572,
			-.2936,
			-.3587,
			-.03724,
			-.05283,
			-.002081,
			.2002,
			.06014,
			.006717,
			.1206,
			.1792,
			.03937,
			.03084,
			-.1239,
			.03236,
			-.04124,
			-.1087,
			.1281,
			.008397,
			.1704,
			.05675,
			-.1885,
			-.09126,
			-.3178,
			.1089,
			-.2273,
			-.03483,
			-.1443,
			.2286,
			-.05823,
			.2606,
			.1703,
			-.03576,
			.1869,
			-.04952,
			-.1514,
			.003316,
			-.241,
			.2179,
			.0588,
			-.04453,
			.09784,
			.06006,
			.1064,
			-.2104,
			-.0329,
			.1231,
			.0703,
			-.1002,
			.06226,
			-.1042,
			-.03522,
			.04848,
			.03833,
			.08306,
			.07133,
			.1653,
			-.0515,
			.1163,
			.3737,
			.2477,
			.1111,
			-.1097,
			-.2944,
			-.02951,
			.006027,
			-.1064,
			-.1255,
			-.1307,
			-.07037,
			.02035,
			.3969,
			.103,
			-.08527,
			-.08043,
			.08698,
			.1988,
			-.1112,
			-.02603,
			-.1421,
			.06273,
			-.2209,
			.07007,
			.1799,
			.3697,
			.03017,
			-.08169,
			.2095,
			-.1093,
			-.08505,
			.1922,
			.2186,
			.007504,
			.06353,
			.06079,
			.06841,
			-.2631,
			.06878,
			-.04939,
			.02986,
			-.1365,
			-.06488,
			.096,
			-.06947,
			.1216,
			-.04505,
			.1946,
			.08087,
			.2032,
			-.05416,
			-.02238,
			-.06142,
			.1149,
			-.02345,
			.08551,
			.1006,
			.03512,
			.06639,
			-.09791,
			.08333,
			-.129,
			.1439,
			.01863,
			-.1588,
			.065,
			.03143,
			.1851,
			.08166,
			-.3811,
			.03547,
			-.09946,
			.08942,
			-.004294,
			.1251,
			-.02055,
			.06737,
			-.1464,
			-.00143,
			-.06539,
			-.03306,
			-.06101,
			.0404,
			-.1164,
			-.2339,
			.03828,
			-.1417,
			.05242,
			-.1728,
			.1855,
			.2042,
			.1597,
			.1743,
			-.06087,
			.3525,
			.004625,
			.2221,
			.08118,
			.1546,
			.06942,
			-.07609,
			-.3714,
			.02173,
			.1006,
			.3135,
			-.01861,
			-.07487,
			-.07279,
			.05419,
			-.1598,
			-.03375,
			.1647,
			-.1216,
			.1984,
			-.01509,
			.1615,
			-.1137,
			.1594,
			-.1048,
			.003819,
			-.1365,
			.4603,
			.07076,
			-.01978,
			.05695,
			-.04474,
			-.1578,
			-.02392,
			-.0685,
			.3392,
			-.03553,
			.04126,
			.1843,
			-.326,
			.1079,
			.0191,
			-.09222,
			-.07436,
			.2067,
			-.1914,
			.177,
			-.06744,
			-.01105,
			.0228,
			.114,
			.2629,
			-.02108,
			.1059,
			-.4176,
			-.01171,
			-.1367,
			.01877,
			-.009655,
			.486,
			-.1865,
			.0468,
			-.3798,
			.0396,
			.003014,
			.02549,
			-.1026,
			.1629,
			-.006552,
			.05999,
			.04607,
			.1188,
			-.07003,
			.1237,
			.361,
			-.0201,
			.266,
			-.06215,
			-.2057,
			-.2539,
			-.08857,
			-.001627,
			.06497,
			-.1127,
			-.09627,
			.1091,
			-.5407,
			-.001453,
			-.2862,
			.06256,
			-.2914,
			.3888,
			.2289,
			.1892,
			.09541,
			.07743,
			-.1413,
			.01992,
			-.1148,
			.4787,
			.03735,
			.1382,
			.1006,
			-.1216,
			-.175,
			.2392,
			.3232,
			9146e-8,
			-.157,
			.2638,
			-.006102,
			-.006313,
			-.01074,
			.07131,
			.05303,
			-.001775,
			-.1319,
			.03529,
			-.5024,
			.1237,
			-.5832,
			.07573,
			-.1868,
			.2626,
			.00769,
			.06986,
			.02094,
			.1145,
			.1506,
			.01112,
			-.04782,
			.3589,
			.03957,
			-.08393,
			-.07964,
			-.3296,
			.2154,
			-.1475,
			.2564,
			.01363,
			-.01453,
			-.1855,
			.07912,
			.2426,
			-.04803,
			-.003974,
			.1987,
			-.1927,
			-.04817,
			.2123,
			.007831,
			.1334,
			-.2797,
			-.04167,
			.1451,
			.1699,
			.0645,
			.1259,
			-.06212,
			-.04677,
			.06625,
			.178,
			.1174,
			-.05229,
			-.1386,
			.05299,
			.1677,
			-.2807,
			-.217,
			-.02845,
			-.04105,
			.0131,
			-.05611,
			.03162,
			-.05852,
			.1082,
			.00895,
			.1616,
			.05937,
			-.09495,
			-.1365,
			-.03152,
			.01162,
			-.3937,
			.1687,
			.1642,
			-.01718,
			-.1897,
			.04331,
			-.1194,
			.1896,
			-.1218,
			.05537,
			.2209,
			.01122,
			-.01317,
			.09296,
			-.07265,
			-.2452,
			.1476,
			-.06341,
			-.2643,
			-.008883,
			.1252,
			.2379,
			.2217,
			.07921,
			.02147,
			.009978,
			-.2967,
			-.04039,
			.02891,
			.005092,
			-.06154,
			.06494,
			.07203,
			.1335,
			-.02972,
			-.01696,
			-.01417,
			-.03294,
			.1836,
			-.339,
			-.01956,
			-.08793,
			.1902,
			.01571,
			-.07184,
			-.2725,
			.2411,
			-.1811,
			.3166,
			-.02186,
			.1059,
			.1514,
			.119,
			.1735,
			.111,
			-.02227,
			-.006513,
			.06847,
			.3421,
			-.1094,
			.06087,
			-.1001,
			-.265,
			-.08474,
			.05161,
			-.01538,
			-.009925,
			.1405,
			.03492,
			.1608,
			-.1799,
			.06884,
			.03767,
			-.02353,
			.03287,
			-.052,
			.06964,
			-.07622,
			.2505,
			.1753,
			-.152,
			-.09267,
			-.1805,
			.03485,
			.1353,
			.1695,
			.06503,
			.07183,
			-.122,
			.01322,
			-.1921,
			-.05216,
			.05674,
			-.1124,
			.2876,
			.2758,
			.07356,
			-.3399,
			.01863,
			.01809,
			-.04875,
			.3889,
			-.1949,
			.06536,
			-.001809,
			-.03372,
			.1529,
			.01535,
			-.04117,
			.05615,
			.08252,
			-.234,
			-.1001,
			-.1858,
			-.01913,
			.01374,
			-.07175,
			.1118,
			-.05053,
			-.09737,
			.1062,
			-.01179,
			.2977,
			.1344,
			.09894,
			.3894,
			.009479,
			-.1063,
			.1221,
			.104,
			.02978,
			.1818,
			.004445,
			.08312,
			-.1351,
			.08905,
			-.04562,
			-.05771,
			.1068,
			.06137,
			-.06269,
			.2289,
			-.03527,
			.1283,
			-.05706,
			-.2204,
			.03749,
			.09383,
			-.1467,
			.04158,
			-.1119,
			-.0886,
			-.2194,
			-.04388,
			-.06945,
			.007029,
			-.07271,
			-.2392,
			.07336,
			.06969,
			-.1228,
			-.06774,
			.09498,
			.2058,
			-.07859,
			-.1429,
			-.02807,
			.04072,
			-.03496,
			-.1704,
			.05941,
			.06833,
			-.1781,
			.06211,
			-.1828,
			.01983,
			-.1161,
			-.07896,
			-.03849,
			-.02315,
			-.01445,
			.04228,
			-.1016,
			.1218,
			-.07491,
			.0444,
			-.3825,
			.02966,
			-.06002,
			-.09934,
			.04816,
			.05647,
			.0629,
			.07538,
			-.04446,
			.06574,
			-.1737,
			-.07019,
			.191,
			-.2004,
			-.1534,
			.01631,
			-.02127,
			-.05832,
			-.007601,
			.01305,
			.1816,
			-.03812,
			-.1085,
			-.4615,
			-.03479,
			-.1004,
			-.001179,
			.08747,
			.1061,
			-.1191,
			.01521,
			-.081,
			.4941,
			-.05059,
			-.1119,
			.1556,
			.1229,
			.08358,
			.03654,
			-.06768,
			-.008274,
			-.04496,
			-.07516,
			.4254,
			.05076,
			.1282,
			.02644,
			-.01724,
			.163,
			-.1148,
			-.2764,
			.5076,
			.07459,
			-.197,
			.03303,
			-.2319,
			-.03069,
			.02231,
			.11,
			.06138,
			-.0403,
			-.02982,
			-.1981,
			.03186,
			.06081,
			-.09455,
			2778e-7,
			-.07839,
			-.03903,
			-.07222,
			.04395,
			.02161,
			-.02322,
			-.04053,
			.1167,
			.05902,
			.05077,
			-.1107,
			.09097,
			.11,
			.07599,
			.01439,
			-.08639,
			.08864,
			-.005869,
			-.07283,
			.05238,
			.09449,
			-.06849,
			-.07472,
			-.07758,
			-.02248,
			-.03471,
			.03868,
			.1299,
			.05298,
			.04988,
			.01156,
			-.01978,
			-.01919,
			.04033,
			.06561,
			-.05199,
			-.02652,
			.012,
			-.03958,
			-.1852,
			.1491,
			-.04489,
			-.09738,
			.01094,
			.1206,
			-.01891,
			-.006024,
			-.1011,
			.07195,
			.03994,
			-.08934,
			.03067,
			-.1453,
			.1723,
			.007596,
			.01347,
			.1131,
			-.07638,
			.1259,
			-.09699,
			-.092,
			-.04541,
			-.04626,
			.03993,
			.1765,
			.2394,
			.05789,
			-.02034,
			-.03545,
			.1522,
			.05553,
			-.03204,
			.1634,
			.2723,
			.3761,
			-5649e-7,
			.01652,
			.08937,
			-.02059,
			.06507,
			.1585,
			.1068,
			.2984,
			-.2511,
			.1518,
			-.074,
			-.01084,
			-.02208,
			-.1694,
			-.08276,
			.1987,
			.08691,
			-.1001,
			.09742,
			-.09048,
			.1978,
			.02331,
			.09759,
			.03966,
			-.1223,
			-.08944,
			.1434,
			.1872,
			.07328,
			-.1548,
			-.02758,
			-.0269,
			-.01831,
			.1481,
			.006113,
			-.005811,
			-.0627,
			-.0885,
			.1225,
			-.4026,
			-.226,
			-.2294,
			-.03783,
			.2185,
			.05648,
			.2581,
			.006176,
			.294,
			-.3332,
			.0758,
			.03984,
			-.09895,
			-.0497,
			-.1326,
			.07215,
			.07902,
			-.02007,
			.1551,
			.1023,
			.09231,
			-.1728,
			.1383,
			-.09979,
			.08419,
			-.08834,
			-.05404,
			-.001919,
			3952e-7,
			-.1387,
			-.1872,
			.03508,
			.04399,
			-.06115,
			-.1064,
			-.08942,
			.01901,
			-.02931,
			.2193,
			-.1208,
			.1187,
			-.02829,
			.03085,
			-.001039,
			.1035,
			.1277
		],
		[
			-.1462,
			-.02479,
			.04428,
			.1025,
			.2634,
			-.1653,
			.2604,
			-.1218,
			.02692,
			.1639,
			.1875,
			.253,
			-.05171,
			-.2719,
			-.008884,
			.05624,
			-.2851,
			.1634,
			.1866,
			-.01987,
			-.3557,
			.0159,
			-.002671,
			-.7912,
			.2418,
			-.5322,
			-.01018,
			-.0743,
			.2924,
			.1611,
			.2683,
			-.1127,
			.3675,
			.5084,
			-.3657,
			.3252,
			.3142,
			.1837,
			.3277,
			-.01056,
			-.3849,
			.1693,
			.1321,
			-8942e-7,
			-.1308,
			-.2562,
			-.05317,
			-.2533,
			-.1665,
			-.05736,
			-.1572,
			-.1348,
			-.2772,
			.1009,
			-.2532,
			-.1234,
			.3047,
			-.4216,
			-.4213,
			.1419,
			.164,
			-.00541,
			-.1937,
			-.08134,
			.08926,
			-.1873,
			.3565,
			.01231,
			.2936,
			-.04268,
			-.3137,
			-.2274,
			-.01515,
			-.3422,
			.1207,
			.5849,
			-.459,
			.1889,
			-.4564,
			-.3283,
			.02783,
			-.1539,
			-.1242,
			-.5503,
			.0591,
			-.314,
			-.3361,
			.2042,
			.6776,
			.5132,
			-.2388,
			.35,
			-.2789,
			-.05983,
			.1123,
			.2912,
			-.4202,
			-.1764,
			.01088,
			-.3462,
			.1936,
			.01556,
			.1486,
			.00681,
			.4882,
			-.08731,
			-.14,
			.04068,
			.1683,
			.4121,
			.1061,
			-.2853,
			.07746,
			-.1982,
			.566,
			.274,
			-.0463,
			.6046,
			-.1537,
			-.01336,
			.1368,
			.1265,
			.09776,
			-.1004,
			-.3103,
			.2497,
			-.4656,
			-.5145,
			-.1137,
			-.252,
			.2255,
			-.2062,
			-.2598,
			.1468,
			-.368,
			.08574,
			.5081,
			-.05109,
			-.2696,
			.4445,
			.1242,
			-.0914,
			-.1727,
			.3378,
			-.0474,
			-.1917,
			.07961,
			-.01836,
			.2238,
			-.1491,
			.0769,
			-.2984,
			.2674,
			.05789,
			-.08293,
			.1884,
			.005131,
			.2926,
			.3798,
			-.08507,
			.2267,
			-.5117,
			-.3615,
			-.006717,
			.1582,
			.397,
			-.4179,
			-.1708,
			-.1908,
			-.3908,
			-.03243,
			-.5339,
			-.207,
			.5723,
			.08647,
			-.08588,
			.2733,
			-.2818,
			-.3734,
			.1166,
			.2087,
			.2925,
			-.09386,
			-.04175,
			.07386,
			-.08781,
			.4624,
			-.1556,
			-.09722,
			-.03017,
			.0922,
			.0176,
			-.1189,
			.08044,
			-.3713,
			.03718,
			.06475,
			8897e-7,
			.1796,
			.1803,
			.6918,
			-.09984,
			.2245,
			-.08287,
			.1059,
			.1384,
			-.06991,
			-.2414,
			.2105,
			.2448,
			.4661,
			.04353,
			-.2022,
			.1156,
			-.08832,
			.1187,
			-.09577,
			.1006,
			.3051,
			-.2382,
			-.5314,
			.3246,
			.06161,
			-.1279,
			-.06479,
			-.1978,
			-.01196,
			-.4472,
			.04022,
			.03983,
			.006974,
			.1406,
			.2742,
			.001356,
			-.3819,
			.01986,
			-.07921,
			.05456,
			.6696,
			.4711,
			-.2903,
			.1907,
			-.09826,
			.1001,
			-.4962,
			-.3659,
			-.4748,
			-.1476,
			-.04166,
			-.003491,
			.1478,
			-.1197,
			.03451,
			.289,
			-.532,
			-.1171,
			.08818,
			-.2207,
			.3133,
			.1965,
			-.06429,
			-.3026,
			-.173,
			.5655,
			.5072,
			-.3463,
			.3377,
			-.2602,
			-.0853,
			.3378,
			-.6648,
			-.3128,
			-.2763,
			-.3814,
			-.4045,
			-.06022,
			-.09864,
			-.3824,
			-.3903,
			.2334,
			.11,
			-.2787,
			-.2197,
			.5192,
			.2739,
			-.09674,
			-.1002,
			.05203,
			.01398,
			-.2297,
			-.2914,
			.03359,
			.314,
			-.06144,
			.1537,
			.115,
			.4379,
			.05304,
			-.26,
			.1057,
			.2433,
			-.08047,
			-.04038,
			-.5221,
			-.144,
			-.7057,
			.6743,
			-.2283,
			.2938,
			.01148,
			-.09453,
			-.3073,
			-.5435,
			.3806,
			-.08191,
			-.2629,
			.2479,
			.1378,
			.2483,
			.3728,
			.3373,
			-.4394,
			-.177,
			-.02881,
			-.4264,
			-.04989,
			.1809,
			-.2017,
			-.2527,
			.2448,
			.02363,
			-.1129,
			-.05604,
			-.6577,
			.2029,
			-.1406,
			.08447,
			.2874,
			.3298,
			.538,
			-.4798,
			.2923,
			.03919,
			-.1449,
			-.213,
			-.1861,
			.4162,
			-.1656,
			-.1029,
			-.461,
			-.3194,
			-.1071,
			-.2559,
			.05598,
			-.06874,
			.1819,
			-.1879,
			-.1754,
			.1148,
			.324,
			-.1557,
			-.009015,
			-.1879,
			-.3127,
			.3568,
			.2998,
			.2931,
			-.1214,
			.1744,
			.5357,
			-.1856,
			.04791,
			.1101,
			-.1926,
			.2075,
			-.2424,
			.327,
			.05305,
			.4039,
			.06445,
			.0285,
			-.1759,
			-.1342,
			-.3988,
			.3836,
			.1896,
			.05877,
			.2567,
			.07433,
			.2118,
			-.1256,
			.03771,
			-.5026,
			.2526,
			.2742,
			.17,
			-.2114,
			-.1831,
			-.02121,
			.1668,
			.1683,
			.2676,
			-.2597,
			-.221,
			-.08593,
			.2582,
			.2391,
			.3176,
			.2453,
			.2855,
			.0145,
			.1934,
			-.2775,
			.2622,
			-.1906,
			-.08711,
			-.3303,
			.05389,
			-.2543,
			-.3589,
			-.3201,
			-.3385,
			-.09209,
			.2855,
			-.1851,
			-.1492,
			-.4929,
			.7905,
			.01211,
			.1761,
			.2996,
			.2107,
			.02422,
			-.1194,
			-.2989,
			.006393,
			.231,
			-.03931,
			.02673,
			-.2559,
			-.1667,
			-.173,
			-.006186,
			.1134,
			-.432,
			-.1793,
			-.044,
			.02718,
			-.2082,
			.2247,
			.3173,
			-.4029,
			.04734,
			-.05832,
			.4318,
			-.3452,
			-.01723,
			-.01952,
			-.1266,
			-.2447,
			-.02369,
			-.04704,
			-.1063,
			-.3142,
			.1426,
			-.3147,
			-.4142,
			-.2217,
			-.1548,
			.2588,
			.03292,
			.3426,
			-.05415,
			-.3073,
			-.2104,
			.1957,
			-.05667,
			.296,
			-.1126,
			.4536,
			.09835,
			.09479,
			.1899,
			.4072,
			.1355,
			-.4342,
			-.01854,
			-.0491,
			.207,
			-.1042,
			.1454,
			.02756,
			-.5658,
			.09291,
			-.2886,
			.1425,
			-.1241,
			.3636,
			-.439,
			-.5798,
			-.2572,
			-.2452,
			.1451,
			-.05686,
			-.6273,
			-.08677,
			-.1134,
			-.03058,
			.09621,
			-.4999,
			.2356,
			-.4771,
			.2206,
			-.2036,
			-.3843,
			-.03995,
			-.04669,
			.1503,
			-.1384,
			.0518,
			.2035,
			-.1255,
			-.01496,
			-.1577,
			.3322,
			-.01453,
			.1378,
			.1784,
			-.2168,
			.201,
			-.4315,
			-.2531,
			-.1686,
			-.1459,
			-.2576,
			-.08868,
			.4815,
			-.06584,
			-.2293,
			.1182,
			.3374,
			.2603,
			-.1236,
			-.4049,
			.1816,
			.1853,
			.1218,
			.6128,
			.1557,
			.5617,
			.06456,
			.1953,
			-.2951,
			-.8509,
			-.1351,
			-.2021,
			-.1331,
			.7309,
			.1712,
			-.155,
			.5539,
			.1856,
			-.7371,
			-.242,
			.3735,
			.3944,
			.5759,
			.112,
			.2798,
			-.3548,
			.001431,
			-.1228,
			.3719,
			.01113,
			-.3369,
			.1196,
			.5375,
			.2331,
			.2956,
			.1204,
			-.3695,
			.1292,
			-.0909,
			-.148,
			-.04057,
			-.2428,
			.5315,
			.07582,
			-.375,
			-.3721,
			.08914,
			.1936,
			.05534,
			.2636,
			-.4177,
			-.1806,
			-.3175,
			-.3397,
			.4463,
			.308,
			.5101,
			.2697,
			-.01404,
			.5169,
			.2102,
			-.3118,
			-.2615,
			.1107,
			-.3979,
			.045,
			.04982,
			-.2553,
			-.296,
			-.2138,
			-.3149,
			.4219,
			.3696,
			.123,
			-.5222,
			.1682,
			.1374,
			.4031,
			.159,
			-.07348,
			-.1463,
			.09087,
			-.2285,
			.06409,
			.1853,
			.1874,
			.5074,
			.5775,
			-.0454,
			-.1133,
			-.1136,
			.1664,
			.09803,
			-.05559,
			.1566,
			.06723,
			-.4352,
			.1561,
			-.09853,
			.245,
			-.3657,
			-.2896,
			-.2935,
			-.205,
			-.3431,
			-.2283,
			-.6105,
			.04213,
			.607,
			-.1801,
			.2901,
			.09973,
			.1397,
			.1223,
			.2193,
			.328,
			.6065,
			.1019,
			-.1425,
			-.06995,
			-.4151,
			.1828,
			.4067,
			-.04589,
			-.09108,
			-.1864,
			-.2199,
			-.3322,
			-.6095,
			-.08055,
			-.1277,
			-.09562,
			.8905,
			-.3895,
			.6391,
			.272,
			.5776,
			-.15,
			-.02527,
			.5134,
			-.09792,
			.3883,
			.3921,
			-.2408,
			-6173e-7,
			-.0903,
			.378,
			-.4399,
			-.1137,
			.2523,
			-.01873,
			-.5134,
			.3268,
			.319,
			.1949,
			-.008418,
			.2349,
			-.2518,
			-.01857,
			.3857,
			-.09046,
			.114,
			.5544,
			.1084,
			-.2193,
			.176,
			-.06965,
			.02756,
			-.1617,
			.1507,
			-.1889,
			-.6205,
			-.06192,
			-.2186,
			-.3748,
			.1005,
			.2693,
			.3351,
			.5085,
			-.1234,
			-.5949,
			.2737,
			-.05613,
			-.5186,
			-.2468,
			.1131,
			-.1198,
			-.3672,
			-.1454,
			-.1396,
			.03169,
			.273,
			-.3302,
			-.154,
			-.5563,
			.5707,
			.2872,
			.07351,
			-.1773,
			.3436,
			-.01074,
			.6917,
			.2849,
			-.07893,
			-.2002,
			.2014,
			.3862,
			.07111,
			-.5646,
			.2464,
			.3188,
			.1212,
			-.2488,
			-.5022,
			.1563,
			.1734,
			.02054,
			.2989,
			-.1227,
			-.2911,
			-.1801,
			.03708,
			.04718,
			.01696
		],
		[
			-.08401,
			-.102,
			-.5032,
			-.1216,
			-.4732,
			-.457,
			-.4331,
			-.5237,
			-.8236,
			.2658,
			.101,
			.1613,
			-.07234,
			-.6204,
			-.2416,
			-.07342,
			-.5227,
			-.7628,
			-.3902,
			-.5467,
			-.7901,
			-.3911,
			-.4263,
			-.463,
			-.1937,
			-.4998,
			-.1992,
			.3959,
			.1314,
			.07145,
			-.3406,
			-.5424,
			-.4665,
			-.4959,
			-.3355,
			.06192,
			.5016,
			.4754,
			.5186,
			.2846,
			.1093,
			-.69,
			.1605,
			-.2392,
			-.3844,
			-.4465,
			-.5145,
			-.4297,
			.3581,
			.1529,
			-.2125,
			.2867,
			.5698,
			-.05166,
			.4433,
			.02877,
			-.09957,
			.901,
			-.09489,
			-.1125,
			-.1272,
			-.2438,
			-.2811,
			.3504,
			.2515,
			.1561,
			.06815,
			.1392,
			-.4494,
			.06961,
			-.451,
			-.2253,
			.004041,
			.3805,
			.3051,
			.5404,
			.6091,
			.4757,
			.2796,
			.5259,
			.4241,
			.2765,
			.1792,
			.1685,
			-.01822,
			-.1964,
			-.3326,
			.5941,
			.4574,
			.1561,
			-.4601,
			-.03908,
			-.1301,
			-.2799,
			-.1177,
			-.3305,
			-.9202,
			-.585,
			-.6145,
			.09709,
			.3134,
			-.03762,
			-.04549,
			.123,
			-.6143,
			-.01045,
			-.04212,
			-.6539,
			.2909,
			.1171,
			.1347,
			.3188,
			.2389,
			.3107,
			.4103,
			1.011,
			1.036,
			.266,
			-.02152,
			.3084,
			.4913,
			.6184,
			.8798,
			.2331,
			.3388,
			.0713,
			.5068,
			.1765,
			-.09639,
			.6191,
			.5337,
			-.004304,
			.3085,
			.1345,
			-.4759,
			-.6017,
			-.3228,
			.00396,
			-.03775,
			-.557,
			-.5727,
			-.4383,
			-.3757,
			-.6473,
			-.2759,
			-.1335,
			.1251,
			.8994,
			.9201,
			.3332,
			.03354,
			.5097,
			.6364,
			.07513,
			-.1865,
			-.2006,
			-.2911,
			-.2024,
			-.364,
			-.2935,
			-.5789,
			-.7946,
			.07478,
			.2688,
			.2156,
			.6049,
			.7778,
			.6352,
			.5644,
			.6972,
			.2379,
			-.2521,
			-.1077,
			-.2973,
			.1227,
			.6689,
			.4402,
			.01104,
			.5033,
			.6899,
			-.3001,
			.1465,
			.08396,
			-.03224,
			.1725,
			.8024,
			.3651,
			.2509,
			1.044,
			.08711,
			-.05512,
			.02561,
			.3595,
			.4307,
			.6881,
			.183,
			.5517,
			.4907,
			.2282,
			.2506,
			.03333,
			-.12,
			-.4452,
			-.3018,
			-.2602,
			-.7264,
			-.4621,
			-.3449,
			-.494,
			-.5644,
			-.3292,
			.7342,
			.5505,
			-.4,
			.04606,
			.6248
		]
	],
	"biases": [
		[
			-.6028,
			-.3383,
			.4229,
			.5935,
			.2509,
			.4126,
			-.05925,
			-.2655,
			-.3186,
			.3165,
			.3645,
			.537,
			-.5435,
			-.4425,
			.2442,
			-.2455,
			-.3132,
			.5256,
			-.3775,
			.3762,
			-.3965,
			.2786,
			.4236,
			.4072,
			.6957,
			.527,
			-.4538,
			-.469,
			-.746,
			-.1391,
			.2665,
			-.1728
		],
		[
			.06296,
			-.1645,
			.245,
			-.1254,
			-.3196,
			.2869,
			-.3641,
			-.373,
			-.3406,
			-.296,
			.172,
			-.2538,
			-.36,
			-.2405,
			-.2873,
			.404,
			.309,
			-.1548,
			-.2819,
			.2768,
			.1716,
			.08528,
			-.0957,
			.275
		],
		[
			1.748,
			1.78,
			2.115,
			2.796,
			3.004,
			3.24,
			4.848,
			5.333,
			5.195
		]
	]
}];
// ../../work/w/calls/server/domain/estimate/learned/tables/judge.ts
var judges = [{
	"sizes": [
		58,
		48,
		32,
		3
	],
	"mean": [
		4.598,
		1.331,
		.4833,
		.4684,
		.4278,
		.936,
		.6391,
		.4731,
		.3268,
		.2,
		.4982,
		1.118,
		.3758,
		.07586,
		.1718,
		.6949,
		.6938,
		.4111,
		.8827,
		.7694,
		.1503,
		.6052,
		.7096,
		.2339,
		.204,
		.167,
		.1455,
		.6697,
		.5702,
		.8154,
		.1081,
		.07103,
		.05066,
		.8957,
		1.12,
		.4632,
		.07221,
		.2035,
		.3654,
		.4611,
		.5825,
		.2688,
		.1816,
		.14,
		.1111,
		.1791,
		.1218,
		.03706,
		.02807,
		.02699,
		.2163,
		.1375,
		.03903,
		.001386,
		.2933,
		.1338,
		.4421,
		.1148
	],
	"spread": [
		3.156,
		1.241,
		.701,
		.6023,
		.4591,
		.8104,
		.7663,
		.6911,
		.5972,
		.4817,
		.5224,
		.6116,
		.3766,
		.7611,
		.9255,
		.8353,
		.6836,
		.47,
		.3317,
		.3189,
		.7466,
		.4817,
		.6121,
		.3592,
		.3334,
		.3048,
		.2808,
		.6928,
		.5752,
		.389,
		.7927,
		.9955,
		.9149,
		.329,
		1.247,
		.4996,
		1.169,
		1.308,
		1.004,
		.9916,
		1.118,
		.5662,
		.4576,
		.3927,
		.3425,
		.3844,
		.328,
		.1899,
		.1662,
		.1631,
		.4128,
		.3454,
		.1947,
		.0382,
		.4358,
		.4798,
		.4976,
		.1986
	],
	"weights": [
		[
			-.3599,
			.06533,
			.1792,
			.2718,
			.1633,
			-.09062,
			.3206,
			-.3377,
			-.3132,
			.07509,
			.1805,
			.02514,
			-.02038,
			.1511,
			.2688,
			.223,
			-.3069,
			-.1419,
			-.227,
			.3116,
			-.07746,
			-.04816,
			-.2803,
			.07574,
			.09228,
			-.2142,
			.1549,
			-.7544,
			-.1259,
			.2412,
			-.1111,
			.1351,
			.2686,
			-.1524,
			.2602,
			-.4252,
			-.2366,
			-.1325,
			.2272,
			-.1984,
			.4971,
			.3496,
			.1767,
			.4007,
			.196,
			.2776,
			-.2027,
			-.2515,
			.04319,
			.3031,
			.05212,
			.1617,
			-.06307,
			-.04645,
			-.05191,
			-.2794,
			-.1636,
			.4638,
			.2541,
			-.1142,
			.2591,
			.007243,
			.2146,
			.2049,
			-.1377,
			-.02396,
			-.06922,
			-.0825,
			-.2418,
			.01004,
			-.1742,
			-.1615,
			-.2817,
			-.3863,
			-.1159,
			-.001331,
			.02561,
			.3615,
			-.1252,
			.1335,
			-.2146,
			-.09426,
			.2271,
			-.08264,
			.1935,
			.007534,
			.09249,
			.01649,
			.002934,
			-.2836,
			-.1349,
			-.07805,
			.04138,
			-.04785,
			-.007885,
			-.01231,
			.0445,
			-.01499,
			-.1108,
			-.178,
			-.08603,
			-.09603,
			.3461,
			-.02794,
			9856e-7,
			.1759,
			.05478,
			-.0355,
			-.2515,
			-.01687,
			.1053,
			-.05786,
			-.05752,
			.3254,
			.08659,
			-.06493,
			.08456,
			.08749,
			-.03114,
			.003451,
			-.4704,
			-.8098,
			.1281,
			.1313,
			.03565,
			-.01454,
			-.02559,
			.2664,
			-.09588,
			-.1393,
			-.07696,
			.2832,
			-.149,
			-.08025,
			-.1324,
			-.03512,
			-.09824,
			.2139,
			.3069,
			-.5706,
			.04536,
			.09148,
			.1995,
			-.2145,
			-.3203,
			.02012,
			-.07913,
			.1552,
			.2123,
			.4517,
			.1275,
			-.03102,
			-.006628,
			.5598,
			-.272,
			-.4388,
			-.5311,
			-.1495,
			.199,
			-.06681,
			.1833,
			-.1861,
			.007057,
			-.2863,
			-.1116,
			.1198,
			.03091,
			-.1416,
			-.2756,
			-.5112,
			-.2991,
			.238,
			.0416,
			-.192,
			-.2501,
			-.03579,
			-.05111,
			.09844,
			-.2109,
			.2837,
			.06689,
			-.1023,
			.1487,
			-.1616,
			-.01801,
			-.1051,
			-.02219,
			.1837,
			-.01474,
			-.1016,
			.1034,
			.09835,
			-.1128,
			.05778,
			-.1138,
			-.0773,
			.1833,
			-.3569,
			-.2622,
			-.2088,
			-.01473,
			.5553,
			-.149,
			.04982,
			.3525,
			-.2311,
			.1768,
			.07267,
			.1432,
			.06119,
			-.2114,
			-.02093,
			.07113,
			.007936,
			.002643,
			.1363,
			.0939,
			-.8051,
			-.2999,
			-.182,
			-.2048,
			.3592,
			.08293,
			.00336,
			.1778,
			.1686,
			.2568,
			-.2812,
			.08994,
			-.2082,
			-.03053,
			-.1741,
			.1559,
			.09184,
			.08713,
			.06737,
			-.07179,
			-.01093,
			-.02205,
			-.08196,
			.1436,
			.01121,
			.1374,
			.1049,
			-.08226,
			-.1822,
			-.1351,
			-.2473,
			-.1929,
			.02356,
			-.2325,
			-.2456,
			.01415,
			.1718,
			.04669,
			.09506,
			-.1906,
			.05612,
			.1628,
			.1031,
			-.1265,
			.1155,
			-.2149,
			.4661,
			-.05463,
			.1081,
			.02066,
			-.01557,
			-.1782,
			.272,
			.06301,
			.2438,
			.1142,
			-.2108,
			.01656,
			-.09409,
			.2381,
			-.04776,
			.09768,
			-.06846,
			.1571,
			.3067,
			-.1685,
			.1546,
			.07241,
			-.1586,
			-.5359,
			-.4117,
			.3185,
			.1582,
			-.06284,
			.4063,
			.03601,
			-.2848,
			-.004172,
			.2437,
			.09383,
			.4238,
			.0241,
			-.2593,
			.5627,
			-.03901,
			.286,
			.01904,
			-.05847,
			-.243,
			.2105,
			.08053,
			-.07005,
			.04981,
			.2332,
			-.09735,
			-.04147,
			-.009135,
			-.08506,
			.002525,
			-.04512,
			.0139,
			.2845,
			.06425,
			-.3869,
			-.07575,
			.06612,
			-.1321,
			-.02998,
			.01481,
			-.1526,
			.0459,
			-.1368,
			.2925,
			.3574,
			-.1091,
			-.112,
			-.04558,
			-.199,
			-.1593,
			.04539,
			.0642,
			-.1072,
			.2121,
			.08965,
			.3685,
			.1975,
			.01597,
			.113,
			.1696,
			.237,
			.01619,
			-.005342,
			.1468,
			.1067,
			.1456,
			-.2005,
			-.1837,
			.3112,
			-.1731,
			.2216,
			-.2101,
			-.1205,
			-.04109,
			-.2808,
			.05451,
			.04246,
			.04973,
			-.272,
			.1117,
			-.06943,
			.06776,
			-.1072,
			-.1371,
			.04271,
			-.1126,
			.06044,
			.1133,
			.2134,
			-.02048,
			-.03954,
			-.08508,
			-.1627,
			.05353,
			-.0273,
			-.08496,
			.1326,
			.1482,
			.05824,
			.1763,
			-.05473,
			-.03468,
			.107,
			.1487,
			.1381,
			-.05373,
			-.05462,
			.02586,
			-.09044,
			.1834,
			-.0842,
			-.005632,
			.2749,
			-.0129,
			-.23,
			.0752,
			-.06969,
			.1939,
			.06404,
			.01007,
			-.1381,
			.05099,
			-.5034,
			.05285,
			-.1135,
			.03269,
			-.004039,
			.04353,
			-.1659,
			.04377,
			-.067,
			.1557,
			-.2067,
			.06525,
			-.04627,
			-.1146,
			.1938,
			-.3341,
			.07093,
			-.04979,
			.03328,
			.07629,
			.1113,
			-.1497,
			.02145,
			.1001,
			.1629,
			-.4449,
			-.3367,
			.1,
			.2143,
			.5609,
			.09186,
			-.07816,
			-.1307,
			-.1234,
			.0939,
			-.2718,
			.09986,
			-.1529,
			.4151,
			.02838,
			.06778,
			-.005649,
			-.2405,
			-.2936,
			-.1148,
			.1178,
			.01948,
			-.07088,
			-.1823,
			.0164,
			-.205,
			.05401,
			.04411,
			.2422,
			-.2085,
			.00506,
			.1127,
			.08936,
			.05367,
			-.1498,
			.1415,
			.01052,
			.2352,
			-.1545,
			.136,
			.09929,
			-.1334,
			-.03134,
			.1788,
			.1308,
			-.1771,
			-.1552,
			-.1438,
			.2503,
			.2784,
			-.2375,
			-.04531,
			.2372,
			.07774,
			.2399,
			-.003398,
			-.08087,
			-.2052,
			.06771,
			-.2672,
			-.1808,
			.05794,
			.3833,
			.2317,
			-.1413,
			-.3605,
			-.2606,
			-.05834,
			-.338,
			.04323,
			.2354,
			.09098,
			.2924,
			.1458,
			.1308,
			.1582,
			-.1367,
			-.2485,
			-.05645,
			.04607,
			-.09295,
			.1241,
			.4861,
			.1527,
			.06126,
			.2204,
			-.139,
			.07033,
			-.1841,
			-.1672,
			.2771,
			.1269,
			-.4413,
			-.2098,
			.08927,
			.3144,
			.01027,
			-.07481,
			-.404,
			.2249,
			.2052,
			.1733,
			.0644,
			-.1174,
			-.03963,
			.04344,
			.1879,
			.1959,
			.1881,
			.1512,
			.07148,
			-.3305,
			-.2196,
			.01766,
			.4495,
			.07341,
			-.4081,
			8962e-7,
			.3124,
			.09978,
			-.1683,
			.1412,
			.1195,
			-.1143,
			-.212,
			.2063,
			.1714,
			.3142,
			.1342,
			-.08728,
			.5608,
			-.01795,
			-.5002,
			9872e-7,
			.1412,
			-.1634,
			-.3388,
			-.3525,
			-.2097,
			-.02551,
			-.008194,
			-.1365,
			.302,
			-.08241,
			-.1559,
			.1905,
			.1188,
			-.1377,
			-.03518,
			.02971,
			-.08238,
			-.04217,
			.07341,
			-.1611,
			-.1612,
			.02507,
			.1563,
			.09326,
			.5136,
			.1022,
			-.01308,
			-.1443,
			-.1306,
			.124,
			-.1516,
			.04276,
			-.1957,
			.2135,
			-.04926,
			.3007,
			.1719,
			-.2699,
			-.009418,
			-.09548,
			.1843,
			.1434,
			-.1123,
			.4382,
			-.08385,
			-.01647,
			.1208,
			-.1265,
			.4048,
			-.3476,
			.3977,
			.03245,
			.1843,
			.1441,
			-.1752,
			-.2901,
			-.2859,
			.0162,
			-.02416,
			.1753,
			-.06799,
			.2396,
			.01626,
			.09268,
			-.1328,
			.1068,
			-.02848,
			-.2302,
			-.007686,
			.4302,
			-.1842,
			-.007157,
			.3357,
			.07794,
			-.2473,
			-.03001,
			-.08506,
			-.2778,
			.3605,
			-.04308,
			.0639,
			.2231,
			.2038,
			.2688,
			-.1667,
			-.2137,
			-.1045,
			.1016,
			-.006062,
			.01294,
			.1013,
			.08319,
			.1888,
			.04859,
			-.1631,
			-.07493,
			-.007879,
			.1115,
			-.179,
			-.1465,
			.08598,
			-.09444,
			-.05486,
			.1315,
			.1481,
			.1972,
			-.07749,
			-.1121,
			.02712,
			.1911,
			-.01454,
			-.2064,
			.08329,
			-.2132,
			-.01661,
			-.1069,
			.04306,
			.09355,
			-.112,
			-.06193,
			-.3127,
			-.1825,
			-.2479,
			.01822,
			.1504,
			-.06491,
			.1624,
			-.07477,
			-.03385,
			.1574,
			.056,
			.1085,
			-.08439,
			.04038,
			-.08756,
			-.2619,
			.08584,
			-.0353,
			.1046,
			.01905,
			.07993,
			8481e-7,
			-.3459,
			-.1119,
			-.1239,
			-.276,
			.1845,
			.1305,
			.02291,
			-.1607,
			-.09604,
			-.0362,
			.1495,
			-.00352,
			-.0437,
			.2623,
			.0226,
			.1403,
			-.1937,
			.004167,
			.04252,
			.2951,
			-.1016,
			-.08696,
			.0245,
			.1105,
			.05772,
			-.01242,
			-.06528,
			.03188,
			.03037,
			-.007117,
			-.2691,
			-.4281,
			-.6602,
			-.2258,
			.176,
			.1097,
			.09928,
			-.2432,
			.04422,
			-.3592,
			.119,
			.09122,
			.1284,
			.1573,
			.02872,
			.2562,
			.1207,
			-.1128,
			.03621,
			.4872,
			-.2865,
			-.04888,
			-.2467,
			.2906,
			.06122,
			-.03413,
			-.3757,
			-.08151,
			.2898,
			.05921,
			-.04581,
			-.06489,
			-.1142,
			.1529,
			.001422,
			-.4289,
			.04438,
			.04255,
			.05707,
			.3474,
			.02978,
			-.01819,
			.1301,
			-.05308,
			.06672,
			-.2034,
			-.04116,
			.06519,
			-.1089,
			-.2493,
			.2514,
			.1906,
			.02854,
			-.256,
			-.1013,
			.1489,
			-.05455,
			-.108,
			-.1315,
			.1379,
			.3053,
			.03088,
			-.1913,
			-.08148,
			.1194,
			-.147,
			.2455,
			.1752,
			-.2343,
			.06795,
			.04975,
			.3499,
			.1155,
			.09898,
			.1141,
			.1324,
			-.1838,
			-.1071,
			-.1404,
			.0497,
			.003472,
			-.432,
			.1438,
			.1796,
			.2679,
			-.2217,
			.07178,
			.1119,
			.2887,
			-.1414,
			-.03263,
			-.07762,
			.1331,
			.07865,
			.0592,
			.1268,
			-.1982,
			.1356,
			-.4155,
			-.2498,
			-.04631,
			.5199,
			-.07158,
			-.01759,
			.1175,
			-.4035,
			-.1318,
			.2318,
			.1244,
			.0233,
			.01314,
			.1614,
			-.1182,
			.2012,
			-.3117,
			.06472,
			.06701,
			-.03987,
			.1711,
			.2605,
			-.1192,
			.01939,
			-.1191,
			.09048,
			-.1499,
			-.1883,
			-.1151,
			-.2536,
			.07018,
			.07174,
			.335,
			.03561,
			.348,
			.1652,
			.02928,
			.3419,
			-.6584,
			-.1379,
			.3483,
			-.1737,
			-.4873,
			.2438,
			-.3283,
			.1963,
			.09363,
			.0442,
			-.1614,
			-.03152,
			-.1057,
			-.01728,
			.2536,
			.1196,
			-.1538,
			-.1975,
			-.4191,
			.02534,
			-.01861,
			.3622,
			.2009,
			.1616,
			.2069,
			.4808,
			-.001377,
			.03823,
			-.01778,
			.1208,
			.1499,
			-.02425,
			-.1599,
			-.1814,
			.4219,
			.2751,
			.1784,
			-.08379,
			.1833,
			.3318,
			.1115,
			-.04388,
			-.1283,
			.546,
			-.1357,
			-.05162,
			.03633,
			.2143,
			-.2467,
			-.0156,
			.5788,
			-.05285,
			-.1266,
			-.3969,
			-.3485,
			-.08355,
			-.336,
			-.1168,
			-.1721,
			-.2357,
			-.1106,
			.4557,
			.1864,
			.1005,
			.04923,
			-.2414,
			-.3745,
			-.05999,
			.7141,
			.4667,
			-.09184,
			.2362,
			-.4058,
			.2129,
			-.1212,
			.1803,
			-.1841,
			.1603,
			-.1121,
			-.2678,
			-.4367,
			.0224,
			.1211,
			-.04414,
			-.1457,
			-.3041,
			-.02674,
			.1901,
			.1221,
			.1602,
			-.02965,
			-.06222,
			.1947,
			.1512,
			-.09695,
			-.0995,
			-.2289,
			-.2487,
			-.003789,
			-.02768,
			-.2334,
			.05529,
			-.1699,
			.1998,
			-.07532,
			.03587,
			-.1429,
			-.1753,
			.01749,
			.2553,
			.2467,
			.2171,
			-.005616,
			.01587,
			.1528,
			.3076,
			.06249,
			.166,
			.1444,
			.04343,
			.06975,
			-.2623,
			.01638,
			-.09761,
			.2163,
			.0438,
			.1113,
			.1691,
			-.1958,
			-.008229,
			.05723,
			.1501,
			.04391,
			-.4486,
			-.07169,
			.2525,
			-.02945,
			.04901,
			-.2317,
			.4446,
			-.306,
			.08256,
			-.05924,
			.06377,
			.2074,
			-.1497,
			.2293,
			-.02194,
			.08367,
			-.4783,
			-.01659,
			-.1819,
			.08239,
			-.1163,
			-.1069,
			-.02078,
			.04586,
			.1949,
			-.1778,
			-.07419,
			-.1633,
			.09813,
			.07525,
			-.1534,
			-.09259,
			-.02618,
			-.4335,
			.1919,
			.1155,
			.02141,
			.07512,
			-.07878,
			-.2021,
			.2737,
			.0973,
			-.05264,
			.2155,
			.1948,
			-.01411,
			-.0075,
			.01102,
			-.2164,
			-.1791,
			.1793,
			-.3659,
			-.009238,
			-.4019,
			.1355,
			-.2793,
			-.06042,
			-.2361,
			-.147,
			.08246,
			.3072,
			.06731,
			-.2062,
			-.09362,
			-.08358,
			-.2106,
			.1465,
			-.1573,
			.01837,
			.009111,
			-.2173,
			.1566,
			-.02094,
			-.01145,
			-.05355,
			-.3917,
			-.0806,
			.06063,
			.07528,
			.1452,
			.1433,
			-.4736,
			-.2448,
			-.07214,
			-.1371,
			-.07262,
			.1854,
			.1358,
			.1717,
			.4022,
			-.3805,
			-.03717,
			.3133,
			.1486,
			-.04558,
			.2599,
			.2236,
			-.1184,
			.2185,
			.1856,
			-.28,
			-.04538,
			.1102,
			.2933,
			.293,
			-.04893,
			-.192,
			.1131,
			.01872,
			-.2775,
			.3422,
			.1798,
			.04873,
			-.127,
			-.07662,
			.1832,
			-.11,
			.2144,
			.1774,
			.04038,
			-.3252,
			.03328,
			.05303,
			.0671,
			-.173,
			-.07887,
			.07476,
			-.3165,
			.0279,
			-.1854,
			.2306,
			.001179,
			.2844,
			.1832,
			-.2338,
			.2183,
			-.09801,
			.2356,
			.1206,
			.3059,
			.09624,
			-.3663,
			-.1201,
			-.1847,
			-.1779,
			.1625,
			.2169,
			.1895,
			-.08641,
			.2867,
			.06419,
			.08576,
			-.1329,
			.1098,
			-.2979,
			-.09765,
			.4382,
			-.03995,
			.03505,
			-.1525,
			.2618,
			-.07404,
			.06815,
			.07245,
			.03152,
			.04905,
			.0907,
			.1732,
			-.3158,
			-.187,
			.001578,
			.1288,
			.005976,
			.05991,
			-.1081,
			-.3301,
			-.3681,
			-.1308,
			-.2157,
			-.2298,
			.198,
			-.06035,
			-.2656,
			.203,
			.022,
			.02186,
			-.276,
			-.1341,
			.06135,
			.01604,
			-.01323,
			-.1192,
			-.05816,
			.05405,
			.1391,
			.09655,
			.18,
			.3827,
			-.01993,
			.3233,
			.03338,
			-.04147,
			-.211,
			-.02025,
			.1861,
			-.1229,
			.09589,
			.09067,
			-.003147,
			.1681,
			-.06655,
			.001827,
			.1264,
			-.1281,
			-.07763,
			-.02445,
			-.2786,
			-.02281,
			.0931,
			.3117,
			-.04651,
			-.06044,
			-.04223,
			.1003,
			-.2422,
			.0798,
			.06865,
			-.06271,
			.1935,
			-.05899,
			-.3226,
			.01348,
			-.2267,
			-.1647,
			.3489,
			-.1039,
			-.1634,
			.1089,
			.2251,
			.2682,
			.03587,
			.161,
			.1388,
			.07877,
			.06916,
			.3363,
			.04985,
			-.03658,
			-.2234,
			-.0617,
			.1143,
			-.1524,
			.04444,
			.03729,
			.1265,
			-.1667,
			.1412,
			.1608,
			.2428,
			-.06008,
			-.2317,
			-.06746,
			.01129,
			-.07304,
			-.4127,
			-.03866,
			.3171,
			-.09025,
			.2248,
			-.1273,
			-.05402,
			-.01613,
			-.22,
			-.01557,
			-.2598,
			.1474,
			-.04135,
			.1121,
			-.1368,
			.2721,
			-.0222,
			.01316,
			.1978,
			.2651,
			.0829,
			.3294,
			.2192,
			.08727,
			-.4661,
			.1958,
			-.1904,
			-.1291,
			.2332,
			.1618,
			.03134,
			-.04553,
			-.3629,
			.1967,
			-.05616,
			-.2289,
			.0489,
			.1297,
			.3074,
			.3101,
			-.01574,
			.05159,
			-.4701,
			-.001985,
			.166,
			-.02756,
			-.3904,
			-.2677,
			-.04899,
			.1721,
			-.09466,
			.04335,
			-.0496,
			.1015,
			-.009621,
			.03832,
			.1047,
			.4521,
			.1725,
			-.1035,
			-.002453,
			.1734,
			.226,
			-.02725,
			.2326,
			-.2988,
			.09732,
			.062,
			-.2363,
			-.1015,
			-.02517,
			.03631,
			-.291,
			.06812,
			-.3064,
			-.1768,
			-.08411,
			.04554,
			-.01576,
			-.3414,
			-.3041,
			-.2298,
			-.2557,
			-.197,
			.1265,
			-.09505,
			-7207e-7,
			.2673,
			.3893,
			.1148,
			-.3936,
			-.09014,
			.233,
			.06381,
			-.2974,
			-.2023,
			.183,
			-.07363,
			.04105,
			-.01268,
			.2075,
			.2508,
			-.2532,
			-.1099,
			-.004456,
			.3265,
			-.1709,
			-.2542,
			-.3079,
			.06612,
			-.1917,
			-.1536,
			.257,
			-.2712,
			.02168,
			-.1749,
			-.1811,
			-.02508,
			-.1933,
			-.2044,
			.2844,
			-.07414,
			-.2875,
			-.00557,
			-.1927,
			.1046,
			-.4763,
			-.07385,
			.2268,
			.005337,
			326e-7,
			-.1388,
			-.06129,
			-.1224,
			-.178,
			-.2909,
			.007855,
			-.2344,
			-.5957,
			-.04578,
			-.1898,
			.06158,
			.03246,
			-.3336,
			-.1831,
			.117,
			.1385,
			-.2256,
			.2184,
			-.3993,
			.07744,
			-.1096,
			-.1815,
			-.2255,
			.009674,
			-.4369,
			-.301,
			.23,
			.3343,
			-.08271,
			-.0952,
			.0344,
			.08828,
			.0921,
			-.2463,
			-.2398,
			-.0473,
			.0928,
			-.05168,
			.4463,
			-.1323,
			-.09087,
			-.1278,
			-.1151,
			.2173,
			.2065,
			-.1146,
			.02941,
			.07255,
			.4258,
			-.1955,
			-.04632,
			.0474,
			-.4196,
			.4337,
			.2366,
			.2517,
			-.007273,
			.09051,
			-.033,
			-.2856,
			.01302,
			.1578,
			-.1386,
			-.154,
			-3572e-7,
			-.09064,
			-.02606,
			.002434,
			-.1043,
			-.06693,
			-.1082,
			.3479,
			.1308,
			-.4673,
			.05142,
			-.1679,
			.4996,
			.09014,
			.002576,
			-.2595,
			.2669,
			-.05782,
			-.1234,
			-.3802,
			.1256,
			.1196,
			-.1163,
			-.18,
			-.1609,
			-.5137,
			-.3658,
			-.2481,
			.01135,
			.2735,
			-.1738,
			.1278,
			.2215,
			.01901,
			.1876,
			-.4902,
			.184,
			.01566,
			-.07794,
			-.31,
			-.309,
			-.4708,
			-.3462,
			.3394,
			.2063,
			-.2487,
			.1019,
			.3156,
			.3334,
			.09858,
			.02867,
			-.4099,
			.06341,
			-.181,
			.1497,
			-.1827,
			-.2642,
			-.03476,
			.1999,
			-.3701,
			-.3848,
			.7324,
			-.03228,
			.167,
			-.1813,
			-.04259,
			.2869,
			.4544,
			.2134,
			.1889,
			.1002,
			.1327,
			.3323,
			.1103,
			-.274,
			.01815,
			-.1005,
			.056,
			.0409,
			.09809,
			.2922,
			-.1794,
			-.08971,
			-.1304,
			-.197,
			-.1371,
			-.3491,
			-.4776,
			.001858,
			.1578,
			-.1732,
			.07852,
			.02851,
			-.1883,
			-.1262,
			.4338,
			.1008,
			-.2238,
			.1364,
			-.4478,
			-.1583,
			.1135,
			.1199,
			-.2188,
			-.2386,
			.2604,
			.05346,
			.04776,
			-.0109,
			-.1121,
			-.1104,
			.05347,
			.2268,
			-.148,
			.07775,
			-.02742,
			-.02777,
			.1722,
			.3306,
			-.261,
			-.3057,
			.04676,
			.2476,
			.08419,
			-.1469,
			.01383,
			.01787,
			.07412,
			.08718,
			.05969,
			-.3576,
			.2159,
			.07438,
			-.07644,
			-.01274,
			-.1093,
			.3242,
			-.1787,
			-.1813,
			-.1922,
			.04778,
			.007041,
			.03212,
			-.08149,
			.2788,
			-.1039,
			-.1371,
			.04471,
			-.04301,
			.02561,
			.1173,
			.198,
			-.08484,
			.6008,
			-.06603,
			-.1041,
			.1316,
			.01202,
			-.1177,
			-.1523,
			.3479,
			-.237,
			.09099,
			-.1848,
			-.1111,
			.2561,
			-.4079,
			-.05933,
			.007,
			-.1524,
			.0247,
			-.06382,
			.1342,
			.2203,
			-.08138,
			-.0164,
			-.07396,
			-.01618,
			-.3947,
			.0353,
			-.2277,
			-.2079,
			-.09379,
			.0198,
			-.1932,
			-.2327,
			-.005102,
			.02977,
			-.06177,
			-.068,
			-.1782,
			-.2005,
			.2362,
			.02246,
			.003844,
			-.588,
			.0582,
			.1898,
			-.0806,
			.1075,
			.04975,
			-.03965,
			-.1864,
			-.02898,
			.1384,
			-.02553,
			.05626,
			-.2915,
			.05141,
			.264,
			-.2201,
			-4675e-7,
			-.0527,
			.2227,
			-.2248,
			-.1283,
			.02712,
			-.3693,
			.1108,
			-.08111,
			-.009533,
			.0451,
			.07672,
			.1211,
			.2751,
			-.08568,
			-.1801,
			-.2168,
			.06686,
			.1981,
			-.3597,
			-.009576,
			.07023,
			-.005439,
			.1531,
			.6089,
			-.1319,
			-.2398,
			-.01454,
			-.04212,
			-.3978,
			.2609,
			-.04918,
			.3252,
			.2383,
			.06687,
			.1388,
			.1313,
			.1208,
			-.09555,
			.1694,
			.0128,
			-.435,
			-.03026,
			.1106,
			.03279,
			.07598,
			.2933,
			-.3769,
			-.1497,
			-.09752,
			-.409,
			.1058,
			.1074,
			.006133,
			.3335,
			.09527,
			.1557,
			-.04395,
			.1065,
			-.1337,
			-.1909,
			-.2128,
			.1244,
			.088,
			-.1045,
			-.03394,
			-.04889,
			.1807,
			-.2414,
			-.3683,
			-.2723,
			-.1464,
			-.5215,
			-.06726,
			.1509,
			.3255,
			.01336,
			-.3388,
			.04414,
			.1164,
			.05231,
			-.3046,
			-.01164,
			.1168,
			-.1122,
			.2427,
			.1199,
			-.06744,
			-.1442,
			-.05921,
			.08101,
			.1939,
			-.2119,
			-.01637,
			-.08498,
			-.08418,
			-.0604,
			-.1426,
			-.03869,
			.6871,
			.04779,
			-.366,
			-.01222,
			.2498,
			.06662,
			.03482,
			.1025,
			.04025,
			1.008,
			-.007652,
			.1042,
			.2835,
			-.03157,
			.2079,
			.08111,
			-.1954,
			.2015,
			-.04023,
			-.2579,
			.2158,
			.02236,
			.06555,
			.0304,
			-.3422,
			-.1103,
			-.6544,
			.3739,
			.1962,
			.2516,
			.4527,
			-.04241,
			.344,
			-.3032,
			.01596,
			.04304,
			.3387,
			.1477,
			-.007636,
			.2276,
			.2985,
			.2504,
			.02729,
			.1494,
			.168,
			-.02537,
			-.3592,
			.1711,
			-.1456,
			.0287,
			-.08789,
			.02653,
			-.01419,
			-.0277,
			.03504,
			.1506,
			-.2567,
			-.0471,
			.1574,
			-.05343,
			-.2038,
			.1745,
			.1011,
			-.3469,
			-.4359,
			.253,
			-.06693,
			.2237,
			.1292,
			-.222,
			-.2219,
			-.1271,
			.01589,
			-.04127,
			.1653,
			.1414,
			-.08811,
			.009494,
			.2039,
			-.1255,
			-.1182,
			.1083,
			.1694,
			.03383,
			.6313,
			.179,
			.1331,
			.1019,
			.1241,
			.2284,
			-.2888,
			.1034,
			-.009541,
			-.3049,
			.06485,
			-.005749,
			.04502,
			-.1586,
			.1296,
			.1655,
			-.199,
			-.04888,
			.5,
			.05089,
			-.01289,
			-.1635,
			-.2343,
			.03819,
			-.2016,
			.08618,
			.01186,
			-.02772,
			-.08839,
			-.003223,
			-.1413,
			-.2747,
			.1252,
			-.3668,
			.1201,
			.1284,
			.2314,
			.02302,
			-.519,
			.1858,
			.03937,
			-.0707,
			-.1584,
			.1185,
			.3521,
			-.2557,
			-.04399,
			.2784,
			.05441,
			-.1425,
			.2053,
			-.04032,
			-.03131,
			-.104,
			.08848,
			-.3936,
			-.1719,
			.06921,
			-.2197,
			-.2223,
			.2217,
			.3378,
			.2065,
			.2035,
			.2363,
			.2361,
			-.01635,
			-.08559,
			-.1324,
			-.2031,
			-.002555,
			.4256,
			-.07239,
			.1423,
			-.05806,
			.1087,
			.03969,
			-.2815,
			.2384,
			.1816,
			-.2744,
			.005445,
			-.09675,
			.07363,
			-.006166,
			.1331,
			-.4603,
			.3559,
			.2661,
			-.06366,
			-.2245,
			-.01146,
			-.1234,
			-.1272,
			.03087,
			.1036,
			.07011,
			.08317,
			-.1766,
			-.1595,
			.1875,
			-.03144,
			.08416,
			.1326,
			-.1809,
			-.1026,
			-.102,
			.1144,
			-.0271,
			-.1672,
			-.2053,
			.05246,
			-.247,
			.03297,
			-.5391,
			.04122,
			-.2275,
			-.1569,
			.03829,
			-.2776,
			-.1614,
			-.00832,
			-.1877,
			.2904,
			.2699,
			-.08632,
			-.08401,
			-.04205,
			-.1212,
			-.1967,
			.05489,
			-.08656,
			.08725,
			-.157,
			.08397,
			-.02091,
			-.06693,
			-.08256,
			.05047,
			.1456,
			-.06863,
			.04335,
			.08556,
			-.1453,
			-.1735,
			.127,
			-.2115,
			.2331,
			.11,
			-.09718,
			.04972,
			.1439,
			.04583,
			.09627,
			.03651,
			.06752,
			-.2764,
			-.351,
			-.324,
			.5036,
			.05089,
			-.1155,
			-.09776,
			-.01849,
			-.3744,
			.09066,
			.183,
			-.2894,
			.186,
			.04533,
			-.07814,
			.2282,
			.2139,
			-.01302,
			-.05409,
			.0681,
			.009699,
			-.104,
			-.0941,
			.06749,
			-.3736,
			.3097,
			-.001505,
			.1801,
			.005669,
			-.08473,
			-.162,
			.1335,
			.05301,
			-.1234,
			.04358,
			.05186,
			-.06591,
			-.03879,
			.0357,
			-.04244,
			.2765,
			-.09624,
			.02653,
			.07721,
			-.01138,
			.3595,
			-.09812,
			-5277e-7,
			-.1327,
			-.01987,
			.08652,
			.2289,
			-.03598,
			-.2302,
			.09084,
			-.1492,
			-.2544,
			-.138,
			.1153,
			-.1282,
			.1138,
			-.1648,
			.05524,
			.3142,
			.2338,
			-.03207,
			.08218,
			.01565,
			.06141,
			-.1232,
			.02906,
			.1164,
			.2004,
			-.228,
			.04845,
			.2515,
			-.1439,
			.2333,
			-.05722,
			.04701,
			.03598,
			-.1635,
			-.1515,
			.2589,
			-.07298,
			-.03656,
			.1544,
			-.08095,
			.05768,
			.2627,
			.04001,
			.1846,
			.1314,
			.1363,
			-.07127,
			-.07883,
			.01984,
			.1733,
			-.0222,
			.1078,
			.1367,
			.03015,
			-.02538,
			.04344,
			-.3479,
			-.1522,
			-.3331,
			.07358,
			.2541,
			.1124,
			-.2734,
			.3653,
			.007927,
			.07138,
			.2169,
			.03568,
			-.07318,
			-.06865,
			-.2039,
			.06255,
			.1085,
			-.275,
			.08182,
			.2543,
			-.06093,
			.1803,
			-.05602,
			-.1453,
			-.05348,
			-.09431,
			-.1923,
			.3265,
			-.1065,
			-.2783,
			.03249,
			-.03142,
			-.008392,
			.01774,
			.01681,
			-.05014,
			.005331,
			.1552,
			.02612,
			-.02889,
			-.547,
			.04229,
			-.1212,
			-.1386,
			-.1222,
			-.01926,
			-.184,
			-.1703,
			.02879,
			-.06996,
			-.02622,
			-.07669,
			-.4656,
			-.4281,
			-.09891,
			.1076,
			.3418,
			.05707,
			-.02634,
			-.1474,
			-.09353,
			-.06128,
			.3478,
			.02286,
			.1161,
			-.1027,
			-.09513,
			-.03905,
			.2478,
			.3169,
			.1019,
			.2192,
			.05378,
			-.05552,
			-.03983,
			-.5321,
			-.03832,
			-.1269,
			.07809,
			-.1209,
			-.1175,
			-.05465,
			.2279,
			.03447,
			.04335,
			.2852,
			.03686,
			.0304,
			.6534,
			.2203,
			.21,
			-.1452,
			-.06366,
			-.0743,
			.04624,
			.2507,
			.3259,
			-.09803,
			-.2817,
			-.02258,
			-.05954,
			.06985,
			.05149,
			.08473,
			.1224,
			-.157,
			.1258,
			-.07064,
			-.177,
			.1594,
			-.06891,
			.06146,
			-.01505,
			.1936,
			-.06495,
			.2307,
			-.4128,
			-.0309,
			.01284,
			-.07007,
			.1182,
			-.03428,
			-.05145,
			.1851,
			-.1381,
			.4308,
			.004925,
			.1757,
			-.01018,
			-.5331,
			-.1647,
			.1051,
			-.1009,
			.2498,
			-.4592,
			-.01807,
			.0559,
			-.07384,
			.17,
			-.2824,
			.04251,
			-.1721,
			-.08698,
			.09344,
			-.094,
			.009514,
			-.1419,
			-.007375,
			-.1684,
			.07844,
			.09603,
			.0668,
			-.2135,
			.0473,
			.1571,
			.003003,
			.0404,
			-.1494,
			.09903,
			-.05128,
			-.07672,
			-.1253,
			-.15,
			.1439,
			.04092,
			-.3745,
			-.09377,
			.01718,
			.01193,
			.141,
			-.04529,
			.2421,
			-.08972,
			.2785,
			.1375,
			.02408,
			-.05706,
			-.1275,
			-.08602,
			.06112,
			-.03046,
			-.1815,
			.1531,
			-.2412,
			.03925,
			-.06844,
			.1649,
			-.1126,
			.2721,
			-.04264,
			-.01069,
			-.1085,
			-.02712,
			.01085,
			.1141,
			.2138,
			-.03937,
			-.4924,
			.0348,
			.05037,
			-7913e-7,
			-.1596,
			.1978,
			.01297,
			.1117,
			-.1548,
			-.03462,
			-.1106,
			-.002845,
			-.06457,
			.0984,
			-.1784,
			-.004662,
			.04954,
			-.1858,
			.06342,
			.3353,
			-.09956,
			-.0948,
			-.1649,
			-.04929,
			.04664,
			.01067,
			-.02068,
			.08731,
			.1251,
			.2416,
			.258,
			-.1007,
			-.1648,
			.03966,
			-.03193,
			-.07648,
			.1431,
			.1676,
			-.05976,
			.1997,
			-.1042,
			.1125,
			-.1288,
			.00697,
			.1295,
			.04186,
			-.06042,
			-.09986,
			.1326,
			-.03706,
			.06966,
			-.09156,
			-.2539,
			-.08739,
			.1616,
			.209,
			-.1825,
			-.3463,
			-.01582,
			-.002278,
			-.05345,
			.01492,
			.3207,
			.03907,
			-.0308,
			.06801,
			.09636,
			-.09887,
			-.4333,
			-.2043,
			.1919,
			.1572,
			.1097,
			-.08324,
			.09886,
			-.176,
			-.6174,
			.1587,
			-.1471,
			-.1285,
			-.1357,
			-.007898,
			.1734,
			.09144,
			-.1988,
			.2229,
			-.2224,
			.0935,
			-.1361,
			.08346,
			-.1206,
			.1237,
			-.07734,
			-.04368,
			-.02302,
			-.1692,
			-.2339,
			.06222,
			.06215,
			-.159,
			-.149,
			.1037,
			.2377,
			.06767,
			.13,
			.1402,
			-.1323,
			.1126,
			-.2017,
			-.003316,
			.1673,
			.008505,
			.05631,
			.1873,
			-.0302,
			-.1025,
			-.06485,
			.08008,
			-.3041,
			-.1255,
			-.2631,
			.01918,
			.183,
			-.1555,
			-.09647,
			-.07054,
			.1135,
			-.1477,
			.05488,
			.07567,
			.1179,
			-.1658,
			.2439,
			.06713,
			.1402,
			.03087,
			-.5382,
			-.1238,
			-.1067,
			.06292,
			.0705,
			.01936,
			-.2322,
			-.0241,
			.02546,
			-.09444,
			-.06983,
			.2815,
			-.03913,
			-.03972,
			.195,
			.02143,
			-.004847,
			.111,
			.04729,
			.08088,
			-.1403,
			-.0915,
			.1045,
			-.04367,
			-.01828,
			.1418,
			.0672,
			-.04715,
			.2501,
			.1194,
			.06047,
			.1908,
			.2726,
			.05308,
			.1517,
			-.03348,
			-.1417,
			-.148,
			-.1917,
			-.02262,
			-.05706,
			-.2426,
			.05293,
			-.1074,
			-.1739,
			.1317,
			.1577,
			-.2119,
			-.1353,
			-.2271,
			-.03752,
			-.1672,
			-4548e-7,
			.07502,
			-.05388,
			-.06733,
			-.2478,
			-.1069,
			-.01948,
			-.0138,
			.06236,
			.2922,
			.07404,
			-.05097,
			-.2587,
			.00373,
			2638e-7,
			.01901,
			-.1022,
			-.2428,
			-.2114,
			-.1303,
			-.0336,
			-.1146,
			-.1583,
			.1382,
			.05503,
			.08714,
			.1499,
			.08133,
			.007594,
			.1856,
			.01237,
			-.08272,
			-.273,
			.1962,
			.0952,
			-.05634,
			-.1254,
			.09585,
			-.1952,
			.1474,
			.04145,
			-.08009,
			.1562,
			.1234,
			.008245,
			.01143,
			.2,
			-.003638,
			-.2446,
			-.06223,
			.03161,
			-.05535,
			.1128,
			.1015,
			.06897,
			-.01487,
			.1134,
			.0924,
			-.03467,
			-.05536,
			-.1178,
			.09424,
			-.1037,
			.3864,
			.07477,
			.04681,
			-.08643,
			.01716,
			-.1634,
			-.1937,
			-.01545,
			-.07174,
			-.08394,
			-.1289,
			-.06425,
			.0419,
			-.05159,
			.001959,
			.1329,
			-.1649,
			-.1614,
			.07305,
			.09111,
			-.01624,
			.1985,
			-.09385,
			.03616,
			-.368,
			.1328,
			-.04896,
			-.0186,
			.06064,
			-.1466,
			.08553,
			.1958,
			-.06928,
			.07725,
			.1832,
			.04333,
			-.2895,
			-.2815,
			-.3034,
			-.1145,
			.2385,
			-.1078,
			.09747,
			-.03399,
			.1109,
			-.3031,
			.3814,
			-.03083,
			-.1447,
			-.1367,
			.06851,
			.1871,
			.097,
			.02211,
			-.1353,
			-.0125,
			.03609,
			.1017,
			.02603,
			.02435,
			-.003337,
			.4122,
			.03187,
			.02799,
			-.2751,
			.07421,
			.0773,
			.07734,
			.08832,
			-.3778,
			-.3147,
			-.01725,
			.2587,
			.3304,
			.1069,
			.2302,
			.06679,
			.1737,
			.09007,
			.02696,
			-.04624,
			-.05525,
			-.1032,
			.1333,
			.3239,
			.4435,
			-.03204,
			.0795,
			-.07676,
			.01001,
			-.1738,
			-.07243,
			-.1274,
			.159,
			-.3892,
			-.206,
			.003661,
			.02562,
			.2779,
			.2433,
			.1461,
			-.05297,
			-.03184,
			.08586,
			.00306,
			-.0854,
			-.2374,
			.07456,
			-.1084,
			-.4416,
			-.02951,
			-.1904,
			-.07421,
			.06288,
			.1271,
			.1294,
			.2035,
			.08696,
			.1491,
			-.03822,
			-.08165,
			-.4446,
			-.1243,
			-.02851,
			-.1822,
			-.3128,
			-.0128,
			-.328,
			-.0585,
			.03619,
			.01046,
			-.08291,
			-.2156,
			.05735,
			.0098,
			.08335,
			.0779,
			-.09231,
			.1953,
			-.3588,
			.06889,
			-.07643,
			.2761,
			.03406,
			-.2417,
			.1011,
			-.04317,
			-.01081,
			-.1487,
			.04661,
			-.04435,
			.2969,
			-.07801,
			-.04869,
			.1566,
			.04275,
			.1175,
			.2555,
			.1833,
			.01192,
			.07528,
			-.202,
			.01769,
			.1427,
			-.05153,
			-.07974,
			.07156,
			-.04979,
			-.01155,
			-.001453,
			-.01911,
			.002746,
			.05367,
			-.02046,
			-.09878,
			-.04602,
			.08254,
			.01678,
			-.0482,
			-.1226,
			-.05135,
			-.01819,
			.04038,
			.01231,
			.02771,
			-.08741,
			.02452,
			-.2136,
			.06681,
			-.02091,
			.06204,
			-.04047,
			-4209e-7,
			.06934,
			-.06434,
			.0775,
			.02067,
			.04715,
			-.06472,
			.0308,
			.04095,
			.002538,
			-.01718,
			.01557,
			.008445,
			-.03313,
			-.02837,
			.02645,
			-.04871,
			.02577,
			-.01893,
			.01736,
			-.1746,
			-.01467,
			-.1076
		],
		[
			.09814,
			-.3987,
			-.03871,
			-.0981,
			-.1628,
			.1012,
			-.4828,
			-.06511,
			-.211,
			-.2314,
			-.5221,
			.4334,
			-.446,
			-.02148,
			-.008567,
			-.1316,
			-.08025,
			-.2011,
			.07293,
			.05593,
			.1832,
			-.01641,
			-.08184,
			-.1319,
			-.433,
			.01773,
			.2403,
			-.01587,
			-.06124,
			-.1744,
			-.07852,
			.4735,
			.2235,
			.3812,
			-.3594,
			-.03289,
			.01968,
			.09256,
			-.3279,
			.2404,
			.3536,
			-.06167,
			.2296,
			-.04478,
			.1937,
			.1372,
			-.1223,
			-.3905,
			.1706,
			.4273,
			-.2066,
			-.0726,
			.011,
			-.4148,
			.1441,
			.1591,
			.0403,
			.1307,
			-.1895,
			-.1299,
			.01079,
			-.07559,
			-.1674,
			-.3449,
			.3999,
			.1052,
			.2737,
			-.4042,
			.1591,
			.2383,
			-.3182,
			.1792,
			-.3122,
			.3433,
			.1424,
			-.2428,
			-.3104,
			-.1508,
			-.2952,
			-.2482,
			.0738,
			-.3469,
			.02799,
			-.02252,
			-.3999,
			-.01328,
			.1361,
			.1743,
			-.3094,
			.1736,
			-.09973,
			.3367,
			-.1372,
			-.006062,
			.273,
			.2305,
			-.1627,
			.1262,
			.37,
			-.1301,
			.1387,
			.03894,
			-.1484,
			-.09202,
			-.04632,
			.07735,
			-.1333,
			.01062,
			.01129,
			-.02178,
			-.3466,
			.2302,
			.2429,
			.3665,
			.1643,
			.1152,
			-.1361,
			-.07366,
			-.05721,
			-.06716,
			-.256,
			-.2583,
			-.06189,
			.1411,
			.002118,
			-.01805,
			-.4288,
			-.3427,
			-.1775,
			-.05785,
			.2177,
			-.0213,
			.3132,
			-.3953,
			-.2971,
			.0515,
			.1343,
			.1591,
			.2102,
			-.2625,
			.291,
			.1101,
			-.1523,
			.04189,
			.1016,
			.08848,
			.1529,
			.4303,
			-.08413,
			-.02536,
			-.1119,
			.1926,
			.1356,
			.04162,
			-.1182,
			-.2712,
			-.2247,
			-.1471,
			-.1448,
			.2189,
			-.03687,
			-.2125,
			-.1285,
			.1897,
			.03911,
			.09601,
			6833e-7,
			.005715,
			-.1102,
			-.4721,
			.06044,
			.04184,
			-.1823,
			-.4393,
			-.6673,
			-.2524,
			.1965,
			.1353,
			.3876,
			.0906,
			.00715,
			-.3109,
			.2928,
			-.08138,
			-.04833,
			-.0107,
			-.04664,
			-.3003,
			.06009,
			-.3017,
			-.2175,
			-.005146,
			.2766,
			.1574,
			.2232,
			-.3371,
			-.0254,
			-.2967,
			-.2249,
			.3549,
			-.5871,
			-.1995,
			-.06084,
			-.2888,
			-.08833,
			-.09402,
			-.1417,
			.06716,
			.3277,
			.01966,
			-.112,
			.3238,
			-.4106,
			-.09608,
			.2199,
			.08188,
			-.2834,
			-.04006,
			-.2815,
			-.01276,
			-.01529,
			.1936,
			-.1963,
			.1393,
			.3714,
			-.09583,
			-.06156,
			.1286,
			.2747,
			.01278,
			-.04982,
			-.4398,
			.1905,
			.3512,
			-.3341,
			.2386,
			.1628,
			-.2001,
			.1582,
			-.02429,
			-.1441,
			-.02686,
			.1919,
			.09272,
			-.03049,
			-.2684,
			-.5342,
			-.101,
			.2388,
			.3276,
			.5955,
			-.1101,
			-.1573,
			-.1232,
			.1763,
			.1511,
			.2246,
			-.4929,
			.269,
			-.246,
			.2899,
			-.1148,
			-.1662,
			-.1505,
			-.006163,
			.1431,
			-.1902,
			.5096,
			.1519,
			-.2905,
			-.004683,
			.1356,
			-.07546,
			-.107,
			-.2958,
			.05754,
			-.09552,
			-.07866,
			-.213,
			-.03249,
			-.1351,
			-.3189,
			.2679,
			.09819,
			.223,
			-.1374,
			.5271,
			.1387,
			-.09343,
			-.06253,
			-.4297,
			.07898,
			.1514,
			-.1022,
			.4359,
			.2206,
			.389,
			-.02975,
			.1622,
			-.1616,
			-.2233,
			-.1171,
			-.1282,
			-.1426,
			.2893,
			.06726,
			.1949,
			.06909,
			-.1269,
			.1269,
			.002175,
			-.09876,
			.4046,
			.2283,
			-.1118,
			-.1443,
			.224,
			.1489,
			-.174,
			-.04329,
			.06535,
			.01371,
			-.1251,
			-.5825,
			-.005348,
			-.6001,
			.1115,
			.562,
			.3965,
			-.05701,
			.09109,
			.03198,
			-.2091,
			-.2763,
			.1137,
			-.1594,
			-.2506,
			.07173,
			.506,
			-.109,
			.2128,
			.03228,
			-.08912,
			-.2531,
			-.07953,
			.02939,
			-.3378,
			-.1472,
			-.04933,
			-.4726,
			-.2546,
			-.03602,
			.08803,
			.2054,
			.4481,
			.4535,
			-.005056,
			-.05572,
			.08372,
			-.002872,
			.01472,
			.2578,
			-.4216,
			.07878,
			-.2078,
			-.3098,
			-.003521,
			.3695,
			.01482,
			-.05279,
			-.08435,
			-.02947,
			-.1463,
			.04657,
			-.07835,
			-.3301,
			-.07538,
			.1878,
			-.07893,
			-.1841,
			.3114,
			-.07253,
			-.1386,
			-.08051,
			.1807,
			-.07208,
			-.156,
			-.09981,
			.08637,
			-.3416,
			-.01009,
			.2233,
			-.2825,
			.1388,
			.1424,
			.1863,
			.4153,
			.08085,
			-.132,
			.2283,
			.1355,
			.2531,
			.3467,
			.05969,
			-.2008,
			-.07335,
			-.1316,
			.1729,
			-.3962,
			.04903,
			-.1546,
			.1109,
			-.03832,
			-.3389,
			-.1028,
			.07107,
			.04146,
			-.01429,
			-.06305,
			-.2501,
			.2094,
			-.08509,
			-.3556,
			.03064,
			-.1703,
			-.2686,
			.001815,
			.03784,
			.2308,
			-.1829,
			-.0549,
			-.1293,
			.191,
			.5512,
			.1012,
			.06593,
			.01236,
			-.06788,
			.2482,
			.2159,
			-.2709,
			-.0557,
			-.1109,
			.3867,
			.01156,
			-.3431,
			.09019,
			-.103,
			-.2887,
			-.2426,
			.005368,
			-.09513,
			.1849,
			-.1525,
			-.2451,
			.05312,
			.05875,
			.1029,
			.3137,
			.113,
			-.08098,
			.2999,
			-.05753,
			.07223,
			.3943,
			.1298,
			.2142,
			.1653,
			.004853,
			-.3275,
			.4402,
			-.1765,
			-.2434,
			.07495,
			-.09912,
			-.006132,
			-.002659,
			-.2845,
			-.04223,
			-.04472,
			.2232,
			.02489,
			-.1126,
			.4264,
			-.007289,
			.1504,
			-.08358,
			-.219,
			-.1328,
			.2333,
			.2386,
			-.0513,
			.243,
			-.1341,
			.01487,
			-.171,
			-.04251,
			-.07323,
			.1817,
			-.1805,
			-.4113,
			-.4122,
			.149,
			.1078,
			.3652,
			-.1961,
			.1547,
			-.009634,
			.06469,
			-.08995,
			-.117,
			.184,
			.1549,
			-.09295,
			-.2485,
			.005478,
			-.2667,
			.2609,
			-.03512,
			-.1663,
			.5342,
			-.1348,
			-.06236,
			-.03583,
			.1972,
			-.09096,
			.08897,
			.3253,
			.4445,
			-.08303,
			.1077,
			-.06327,
			.1512,
			-.244,
			-.03197,
			.3434,
			-.218,
			.06426,
			-.01916,
			-.3467,
			-.004297,
			-.01387,
			-.1027,
			-.2844,
			-.2467,
			.2317,
			-.1567,
			-.105,
			-.1288,
			.2906,
			.1247,
			.3033,
			.2376,
			-.005026,
			-.3023,
			-.1742,
			-.1098,
			-.193,
			.3582,
			.1918,
			.07681,
			.2886,
			-.315,
			.1262,
			.1574,
			.2301,
			-.1108,
			.2684,
			-.134,
			.2371,
			-.457,
			-.02183,
			.3708,
			.2022,
			.1769,
			-.01273,
			-.07059,
			-.002624,
			.2355,
			-.1042,
			-.1925,
			.3364,
			-.06891,
			-.1259,
			.4268,
			.1348,
			-.3032,
			.3684,
			-.159,
			-.4256,
			-.02492,
			.1178,
			.3884,
			-.07668,
			-.06604,
			.1912,
			-.2452,
			.5118,
			-.1999,
			-.2878,
			-.3653,
			-.3815,
			.2987,
			.04939,
			-.1554,
			-.2321,
			.1165,
			.2368,
			-.06264,
			-.03631,
			-.07873,
			.3155,
			-.122,
			.1366,
			-.3064,
			.05238,
			.08446,
			.06278,
			-.3662,
			-.1876,
			.1866,
			-.1572,
			-.3264,
			-.2053,
			.3041,
			.3165,
			.09275,
			-.03808,
			.1589,
			-.3633,
			-.03424,
			.08711,
			-.1192,
			.3541,
			-.06521,
			.1625,
			.08913,
			.04507,
			-.4106,
			-.06003,
			-.01251,
			.4446,
			-.008684,
			-.1124,
			.009082,
			.2399,
			-.3491,
			-.05572,
			.04835,
			-.1395,
			.1743,
			.01256,
			.04494,
			-.2561,
			-.05016,
			8216e-7,
			.2741,
			.102,
			-.4444,
			.07764,
			.1897,
			.1322,
			.3121,
			-.2679,
			-.2137,
			-.09971,
			-.09682,
			-.205,
			.163,
			.2001,
			-.07128,
			-.2633,
			-.01725,
			.08202,
			-.1257,
			-.1739,
			.2706,
			-.01833,
			-.016,
			-.01413,
			.1211,
			.1905,
			-.07287,
			.05671,
			.03683,
			.2915,
			-.1987,
			-.02182,
			.2901,
			.2075,
			-.04812,
			.1976,
			-.1315,
			.03968,
			-.016,
			-.001336,
			-.3802,
			.254,
			-.1918,
			-.6033,
			.1103,
			-.1275,
			-.01768,
			.05407,
			.2447,
			-.2416,
			-.001002,
			-.1652,
			-.4636,
			.1672,
			-.299,
			-.02305,
			.04617,
			-.2193,
			-.4602,
			.02156,
			-.1136,
			-.5482,
			.01009,
			.2662,
			-.07117,
			-.07199,
			-.2506,
			-.2073,
			.2769,
			-.1975,
			-.3919,
			-.138,
			.1377,
			.07817,
			.1237,
			.2516,
			-.1699,
			.1014,
			.02955,
			.03569,
			6178e-7,
			-.04574,
			-.03252,
			.08704,
			.2408,
			.1986,
			.3551,
			-.1254,
			-.08586,
			.3193,
			-.03593,
			.2564,
			.04728,
			-.05344,
			-.1013,
			-.08231,
			-.142,
			-.1365,
			-.08584,
			.2204,
			.06366,
			.3508,
			.07647,
			-.03202,
			.1424,
			.05622,
			.3244,
			.1814,
			.009789,
			-.1004,
			.2339,
			.2379,
			-.08976,
			.1704,
			-.05838,
			.03572,
			.06891,
			.1373,
			-.1247,
			.1787,
			-.1908,
			-.253,
			-.04652,
			-.2525,
			-.3258,
			-.005031,
			.2343,
			-.2693,
			.35,
			-.2172,
			.5875,
			.01472,
			-.2955,
			.01745,
			-.3494,
			-.09506,
			-.3004,
			.05473,
			-.2232,
			-.1027,
			.3487,
			-.3938,
			.102,
			.3398,
			.2248,
			.09005,
			.08928,
			.2357,
			-.1976,
			.1237,
			-.2991,
			-.392,
			.01092,
			.1296,
			-.07702,
			.1484,
			-.2949,
			.1841,
			.2554,
			-.05299,
			.05813,
			-.1935,
			-.07658,
			-.2362,
			-.1733,
			.2893,
			.04414,
			-.1116,
			.152,
			-.01901,
			.1383,
			.1738,
			-.009969,
			-.008042,
			.08033,
			.2851,
			-.1092,
			.04462,
			.1646,
			.3026,
			.1194,
			.3828,
			-.4194,
			-.08833,
			-.1651,
			.2134,
			-.1408,
			.3398,
			-.2037,
			-.2195,
			.08354,
			-.129,
			-.2888,
			.2574,
			.1221,
			.1421,
			.2025,
			-.3115,
			-.1503,
			.05394,
			-.4629,
			.4731,
			-.03364,
			.07429,
			.4208,
			.1399,
			.03005,
			.04662,
			.3723,
			-.0682,
			-.3576,
			-.3038,
			.3301,
			-.1792,
			.3011,
			-.1408,
			-.04123,
			-.32,
			-.2066,
			.609,
			-.163,
			.2575,
			-.1848,
			.192,
			-.3208,
			-.2989,
			-.04889,
			.1158,
			.2719,
			-.05862,
			-.06595,
			.08722,
			.3256,
			-.001194,
			.4016,
			.1361,
			-.2513,
			.04909,
			.04337,
			.1643,
			.4241,
			-.07295,
			-.09959,
			-.0288,
			.176,
			-.01453,
			.01619,
			.0872,
			.1066,
			.2675,
			.006362,
			-.1092,
			.1417,
			.01992,
			.114,
			-.006366,
			.05781,
			-.02446,
			.1832,
			-.1288,
			.1788,
			-.2551,
			-.2161,
			.09013,
			-.2757,
			-.1825,
			.08166,
			-.02879,
			.0193,
			.2275,
			.001246,
			-.1866,
			.06972,
			-.1404,
			-.004258,
			.04134,
			.07461,
			-.1878,
			-.1011,
			.3227,
			-.1988,
			.2003,
			.2648,
			-.2611,
			.2735,
			.1957,
			-.03637,
			.147,
			-.2817,
			-.06549,
			-.0203,
			.3451,
			.05705,
			.002525,
			.3295,
			-.06665,
			-.2572,
			.2543,
			-.3212,
			-.06073,
			-.2769,
			.1708,
			-.05674,
			-.3359,
			.1673,
			.1929,
			-.2489,
			.14,
			.1831,
			.1023,
			-.1754,
			.1325,
			-.1621,
			.08017,
			-.2395,
			.05304,
			.07472,
			-.4189,
			.05501,
			.2685,
			.1138,
			.3238,
			.1073,
			.1185,
			-.2695,
			.1926,
			-.113,
			.196,
			-.1772,
			.03627,
			.1315,
			-.1904,
			.04771,
			-.408,
			-.1618,
			.07045,
			-.05976,
			.08933,
			.1611,
			-.216,
			.2451,
			-.4266,
			-.1107,
			.3655,
			-.1729,
			-.002128,
			.03501,
			-.1895,
			-.3769,
			-.119,
			-.1693,
			-.4157,
			-.3832,
			.01702,
			.328,
			.4157,
			-.08746,
			-.1395,
			.1819,
			.1488,
			-.003835,
			.253,
			-.2103,
			-.1436,
			.2169,
			-.2761,
			-.1906,
			-.01471,
			.2291,
			.6839,
			.3027,
			.2241,
			-.1241,
			.2229,
			.02817,
			-.146,
			.08139,
			-.2751,
			-.03427,
			.07837,
			-.4997,
			-.1241,
			.1558,
			-.05136,
			-.07624,
			-.02824,
			-.1023,
			-.0126,
			-.1758,
			.04436,
			.2486,
			-.07816,
			.2273,
			.2448,
			-.329,
			.2646,
			.1722,
			-.09263,
			-.4615,
			.2606,
			-.02772,
			.0124,
			-.2531,
			-.1941,
			.03092,
			-.4625,
			-.3463,
			.4118,
			.5822,
			-.1951,
			.09396,
			-.2244,
			-.08201,
			-.006749,
			-.01886,
			.3787,
			-.1139,
			-.1759,
			.1037,
			-.2003,
			-.0859,
			-.2566,
			.05919,
			.1058,
			.1757,
			-.0561,
			-.1997,
			-.1244,
			.02107,
			-.4288,
			-.02646,
			-.04297,
			-.02705,
			.2271,
			-.006612,
			.01614,
			-.2946,
			.06042,
			.2519,
			-.242,
			.2621,
			.1162,
			.2071,
			-.05005,
			-.3891,
			-.3526,
			-.3947,
			-.088,
			-.01266,
			-.1139,
			-.03541,
			.267,
			-.3854,
			-.114,
			.2741,
			-.1772,
			.2264,
			.3352,
			.02666,
			-.04806,
			.2931,
			-.1387,
			-.3608,
			.1221,
			-.02315,
			-.2447,
			-.1636,
			.3254,
			.07657,
			-.1039,
			.1226,
			-.1522,
			-.132,
			.3344,
			-.1977,
			-.2029,
			-.08318,
			.07833,
			.2319,
			-.08947,
			.06327,
			-.04455,
			-.04294,
			-.5728,
			-.2811,
			-.1216,
			.03919,
			-.06423,
			.146,
			-.2965,
			-.136,
			.003918,
			-.1022,
			.07366,
			.2296,
			-.2091,
			.2526,
			-.1056,
			-.3049,
			.1374,
			-.0198,
			.3912,
			-.3005,
			.02141,
			-.2164,
			.1528,
			-.4525,
			-.1051,
			-.4194,
			.1289,
			.08083,
			-.2265,
			.02202,
			.0998,
			-.1418,
			-.4373,
			.1224,
			-.4703,
			-.3576,
			-.01263,
			.1768,
			.2405,
			-.0787,
			-.1022,
			-.09955,
			-.104,
			-.1273,
			.1012,
			.1277,
			-.122,
			-.1797,
			-.01991,
			-.01877,
			-.3549,
			-.007468,
			.4599,
			.4783,
			.1294,
			.09387,
			.3,
			.1986,
			.125,
			.02737,
			.1714,
			.02797,
			-.1182,
			.1644,
			-.1297,
			-.2232,
			-.0887,
			-.1599,
			-.1399,
			.06151,
			.04262,
			-.1635,
			.1251,
			-.008295,
			-.2653,
			.1352,
			-.2282,
			-.4478,
			.2931,
			.1121,
			-.1925,
			-.2623,
			-.4545,
			.06019,
			.2905,
			-.03876,
			.1318,
			.2331,
			-.2684,
			-.2831,
			.1213,
			-.276,
			.2457,
			.2802,
			.08401,
			-.3329,
			.2143,
			-.09833,
			-.07045,
			.263,
			.02019,
			.07947,
			.374,
			-.3602,
			-.1833,
			.3008,
			.149,
			-.04271,
			.1184,
			-.001981,
			.09294,
			.3202,
			.1205,
			.1148,
			-.02196,
			.1644,
			.09947,
			.06126,
			-.4532,
			-.2341,
			.1554,
			.2137,
			.2099,
			-.2231,
			-.002566,
			.4345,
			.09433,
			.465,
			.143,
			-.114,
			.1149,
			.304,
			-.143,
			.009883,
			.5435,
			.5201,
			-.09879,
			-.04704,
			-.2301,
			.1399,
			-.3443,
			-.04535,
			.3006,
			.2346,
			.2531,
			-.2803,
			.1343,
			-.1192,
			-.0411,
			.3465,
			.03396,
			.5466,
			.019,
			-.1237,
			-.3524,
			.06462,
			-.2231,
			-.03257,
			-.1323,
			-.6948,
			-.1425,
			-.04586,
			.1466,
			.266,
			-.111,
			-.05288,
			.09603,
			.3067,
			.044,
			.1487,
			-.0359,
			-.1275,
			-.07173,
			-.09249,
			-.3373,
			.7941,
			-.05595,
			-.01053,
			-.01441,
			.05268,
			-.06232,
			.03723,
			.02799,
			.1144,
			.3584,
			-.09763,
			-.09197,
			.3925,
			.07174,
			-.001508,
			-.1915,
			-.1525,
			-.5435,
			-.3568,
			.1875,
			.1144,
			-.3349,
			-.333,
			.06978,
			.09206,
			.1551,
			-.4731,
			-.1023,
			.2725,
			-.1235,
			.06412,
			.1166,
			-.2253,
			-.4135,
			.1555,
			-.1333,
			-.2395,
			.07,
			.2322,
			.1255,
			.06546,
			.06005,
			.2518,
			-.1392,
			.2128,
			.705,
			-.1774,
			-.09946,
			.2394,
			.07113,
			.1221,
			-.09573,
			.1282,
			.02262,
			-.343,
			-.1463,
			-.2412,
			.02934,
			.1122,
			-.4759,
			-.2835,
			-.1187,
			.05053,
			.1694,
			.04808,
			.3974,
			.1185,
			.01389,
			.1267,
			-.01941,
			.03114,
			.225,
			-.1628,
			-.119,
			.305,
			.4051,
			5794e-7,
			.03197,
			-.1867,
			-.0262,
			.03109,
			-.2514,
			.1984,
			.09752,
			-.1472,
			.4192,
			-.2001,
			.1688,
			-.06493,
			.1866,
			-.291,
			.01235,
			-.0755,
			.4833,
			-.05792,
			.07327,
			.01984,
			.1863,
			-.1818,
			-.1599,
			.01696,
			-.1435,
			-.2817,
			-.0788,
			.02855,
			-.2024,
			-.1861,
			-.00511,
			.1306,
			.3049,
			-.03184,
			.1488,
			-.08177,
			-.23,
			-.2924,
			-.1203,
			-.03016,
			-.1095,
			-.1861,
			-.3642,
			-.06476,
			.317,
			.154,
			-.0251,
			.1454,
			.3099,
			-.3653,
			-.08178,
			-.01652,
			-.47,
			.1481,
			-.1491,
			.1292,
			.0807,
			-.149,
			.009699,
			.0102,
			-.0093,
			-.02312,
			-.332,
			.1237,
			.09316,
			-.3471,
			.6111,
			-.01908,
			-.04902,
			.4261,
			.1612,
			.005877,
			.2278,
			-.3904,
			.08784,
			-.2024,
			-.09189,
			-.4438,
			.04345,
			-.07608,
			-.4064,
			.04431,
			-.04566,
			.2009,
			-.2763,
			-.04832,
			.2644,
			-.1606,
			-.1245,
			-.005578,
			.1349,
			-.3763,
			.2565,
			-.1573,
			-.4135,
			.171,
			.1718,
			.009229,
			-.1006,
			-.282,
			.2352,
			.12,
			-.03757,
			.2222,
			.07563,
			.1843,
			-.1055,
			.2301,
			-.05432,
			.03433,
			.1864,
			.06748,
			-.1449,
			.1285,
			.0756,
			-.237,
			-.1908,
			.09333,
			.4607,
			.0239,
			-.006838,
			.01796,
			.1592,
			-.09924,
			-.04129,
			.2064,
			.1032,
			-.1901,
			.06339,
			.2101,
			-.09635,
			.1544,
			-.03427,
			.1681,
			-.3179,
			-.1547,
			.1773,
			.1289,
			.037,
			-2502e-7,
			-.293,
			-.3316,
			-.06973,
			.3624,
			-.1194
		],
		[
			-.5156,
			.0818,
			.3595,
			.1678,
			-.05002,
			.4934,
			.2805,
			-.2636,
			-.6135,
			.1764,
			.05958,
			-.4925,
			-.2097,
			-.2004,
			.5382,
			.0921,
			.1844,
			-.663,
			-.1825,
			.4272,
			.2118,
			.07861,
			-.2215,
			.4697,
			.1809,
			-.5874,
			.3739,
			-.2845,
			.07802,
			.4274,
			-.06502,
			-.3848,
			.4244,
			.03655,
			.07348,
			-.6261,
			-.7067,
			.239,
			-.1042,
			-.312,
			.6071,
			.06054,
			-.2588,
			.2002,
			-.2194,
			.2199,
			-.1696,
			-.5507,
			.3509,
			-.3201,
			.04225,
			.1907,
			-.2787,
			.7639,
			-.2206,
			-.2955,
			.6556,
			.3027,
			-.371,
			.0721,
			.1284,
			-.4835,
			-.1481,
			-.4271,
			.2046,
			-.2103,
			.5745,
			-.2724,
			.2881,
			-.1289,
			.2764,
			.5526,
			.04465,
			.5572,
			-.2001,
			.2838,
			-.2552,
			.3725,
			-.03133,
			.4312,
			-.267,
			.1981,
			.6383,
			-.4319,
			.2671,
			-.3995,
			.3865,
			.0223,
			.3052,
			-.5353,
			-.2868,
			.632,
			-.3302,
			.3107,
			.5542,
			-.1187
		]
	],
	"biases": [
		[
			.291,
			-.2027,
			-.06191,
			-.2963,
			-.2417,
			-.2646,
			.03844,
			-.2249,
			-.5286,
			.1932,
			.1191,
			.2715,
			-.2885,
			-.01211,
			-.09011,
			-.05834,
			-.1458,
			-.1273,
			.04997,
			-.08284,
			.08159,
			-.1296,
			.06332,
			.2666,
			-.2461,
			-.07179,
			-.2822,
			-.2025,
			-.2632,
			.1405,
			-.1499,
			.6212,
			.4143,
			-.3571,
			.6244,
			.3076,
			-.3795,
			-.2705,
			.3642,
			.241,
			.02885,
			.4505,
			.1516,
			-.3239,
			-.02722,
			-.2376,
			-.1215,
			-.03941
		],
		[
			-.1204,
			-.304,
			.3714,
			.06438,
			-.354,
			.2871,
			-.2595,
			-.4218,
			.1232,
			-.2235,
			.1544,
			.04221,
			-.1192,
			-.03562,
			.1936,
			.2613,
			-.4151,
			-.4629,
			-.2486,
			.09688,
			.3751,
			.008961,
			.3949,
			-.1624,
			.1232,
			-.09867,
			.1012,
			.04961,
			-.07902,
			.04468,
			-.0211,
			.1107
		],
		[
			.02881,
			.0585,
			-.2084
		]
	]
}, {
	"sizes": [
		58,
		48,
		32,
		3
	],
	"mean": [
		4.598,
		1.331,
		.4833,
		.4684,
		.4278,
		.936,
		.6391,
		.4731,
		.3268,
		.2,
		.4982,
		1.118,
		.3758,
		.07586,
		.1718,
		.6949,
		.6938,
		.4111,
		.8827,
		.7694,
		.1503,
		.6052,
		.7096,
		.2339,
		.204,
		.167,
		.1455,
		.6697,
		.5702,
		.8154,
		.1081,
		.07103,
		.05066,
		.8957,
		1.12,
		.4632,
		.07221,
		.2035,
		.3654,
		.4611,
		.5825,
		.2688,
		.1816,
		.14,
		.1111,
		.1791,
		.1218,
		.03706,
		.02807,
		.02699,
		.2163,
		.1375,
		.03903,
		.001386,
		.2933,
		.1338,
		.4421,
		.1148
	],
	"spread": [
		3.156,
		1.241,
		.701,
		.6023,
		.4591,
		.8104,
		.7663,
		.6911,
		.5972,
		.4817,
		.5224,
		.6116,
		.3766,
		.7611,
		.9255,
		.8353,
		.6836,
		.47,
		.3317,
		.3189,
		.7466,
		.4817,
		.6121,
		.3592,
		.3334,
		.3048,
		.2808,
		.6928,
		.5752,
		.389,
		.7927,
		.9955,
		.9149,
		.329,
		1.247,
		.4996,
		1.169,
		1.308,
		1.004,
		.9916,
		1.118,
		.5662,
		.4576,
		.3927,
		.3425,
		.3844,
		.328,
		.1899,
		.1662,
		.1631,
		.4128,
		.3454,
		.1947,
		.0382,
		.4358,
		.4798,
		.4976,
		.1986
	],
	"weights": [
		[
			-.299,
			-.1877,
			-.3601,
			-.1544,
			-.2927,
			.03207,
			-.1209,
			.1117,
			.4102,
			-.2441,
			-.2085,
			-.1659,
			-.5835,
			-.2684,
			.3051,
			-.002401,
			-.1791,
			.2548,
			-.03097,
			-.3595,
			.08488,
			-.1156,
			.1945,
			.04562,
			.3218,
			-.1579,
			-.0774,
			.4092,
			-.05215,
			-.1467,
			-.03755,
			.03404,
			-.09684,
			.5773,
			.3171,
			.1923,
			.5051,
			.3195,
			-.01853,
			-.437,
			-.03911,
			.2738,
			-.08248,
			-.2497,
			-.2624,
			.3307,
			-.3015,
			.06026,
			-.1885,
			.06388,
			-.07104,
			-.3048,
			.01163,
			.1762,
			-.07409,
			.05569,
			.2041,
			.03236,
			-.3141,
			.1759,
			-.09876,
			.02713,
			-.05125,
			-.1709,
			.02772,
			-.02421,
			.167,
			-.1236,
			-.3794,
			.153,
			-.103,
			.1068,
			-.007202,
			-.2328,
			.1909,
			-.2913,
			-.1126,
			-.1758,
			-.2965,
			-.05469,
			.1616,
			-.1562,
			.2625,
			-.009494,
			.1191,
			.2819,
			-.2052,
			-.1492,
			.266,
			.1603,
			-.28,
			.1048,
			-.4281,
			-.09236,
			.08572,
			.0827,
			-.08004,
			-.004083,
			-.06895,
			.2342,
			.09559,
			.1993,
			-.0686,
			-.06669,
			2251e-8,
			.6672,
			.2601,
			.01457,
			.07099,
			.07973,
			.3395,
			.02502,
			-.149,
			-.09356,
			-.3604,
			-.1959,
			-.3129,
			.03811,
			-.1987,
			.1285,
			-.04235,
			.3144,
			-.06611,
			.339,
			.1072,
			.1516,
			-.2257,
			-.1392,
			-.07217,
			.2353,
			-.002943,
			.09282,
			.261,
			.1774,
			-.5212,
			.1007,
			.0456,
			.1068,
			.2573,
			-.04417,
			.5809,
			-.1358,
			-.01518,
			-.1476,
			.1702,
			.06199,
			.02186,
			.02579,
			-.148,
			-.1032,
			.06822,
			.05997,
			-.06168,
			.4403,
			.1211,
			.02033,
			-.07464,
			.05319,
			-.2903,
			-.07338,
			-.1311,
			.04957,
			-.7633,
			-.3431,
			-.5473,
			-.1062,
			-.2069,
			.03357,
			.07894,
			-.06961,
			.3091,
			.01602,
			.06899,
			-.05996,
			-.197,
			.06068,
			-.01519,
			-.05337,
			.03326,
			.04312,
			-.008677,
			-.2239,
			-.6255,
			.05556,
			.04093,
			-.2308,
			-.1298,
			.2685,
			.04597,
			.1744,
			.2651,
			.08542,
			.07229,
			.1201,
			-.1778,
			-.072,
			.01259,
			.03746,
			-.02847,
			.1293,
			-.01399,
			.1355,
			-.4609,
			.2222,
			-.1312,
			-.1638,
			-.2256,
			-.02147,
			-.05716,
			-.1192,
			-.5161,
			-.1951,
			-.8193,
			.1413,
			.1004,
			-.2271,
			-.0443,
			-.02355,
			.1664,
			-.07243,
			-.3096,
			.0631,
			-.2586,
			-.4381,
			-.0298,
			.2256,
			.06697,
			.05776,
			.06821,
			.1948,
			-.2127,
			.03685,
			.02285,
			.07493,
			.00482,
			.2781,
			-.2066,
			-.08642,
			-.08876,
			-.3454,
			-.3916,
			.1975,
			.1545,
			.01667,
			-.0734,
			.07709,
			.2295,
			-.4651,
			-.2142,
			.2268,
			-.04486,
			.1891,
			-.2743,
			-.02957,
			.04566,
			-.2889,
			-.1614,
			.3853,
			-.316,
			.3107,
			-.082,
			.09726,
			-.1234,
			-.1576,
			.2847,
			.03694,
			-.03637,
			-.2056,
			-.2437,
			-.03748,
			.5716,
			-.1164,
			.1756,
			.04816,
			.3947,
			.2021,
			.1435,
			.01488,
			-.03092,
			-.1243,
			.2248,
			.01532,
			-.3814,
			-.07725,
			.01581,
			-.3185,
			.08389,
			.119,
			-.08414,
			.008442,
			.07659,
			-.3988,
			.2801,
			.0272,
			.08919,
			.1308,
			-.2331,
			.1585,
			-.09975,
			.1004,
			-.2302,
			.2353,
			-.09871,
			-.1248,
			-.00244,
			.3184,
			-.2335,
			-.3371,
			-.1694,
			-.3782,
			.2551,
			-.3828,
			.09667,
			-.1943,
			-.1024,
			-.3495,
			.1993,
			-.1572,
			-.3621,
			.5308,
			.07208,
			-.04337,
			-.07875,
			-.1464,
			-.07131,
			.2189,
			-.08161,
			-.1465,
			-.05488,
			-.04149,
			.158,
			.1414,
			-.1252,
			.2394,
			-.04232,
			-.1575,
			.05574,
			-.1757,
			.07271,
			.1066,
			-.1239,
			-.1399,
			.1523,
			.04168,
			.1633,
			.2431,
			-.1826,
			.07378,
			-.155,
			.03759,
			-.2619,
			-.3164,
			-.02255,
			-.2918,
			.2716,
			-.173,
			-.3734,
			.003576,
			.1647,
			.02369,
			.1822,
			.07531,
			-.05356,
			-.04655,
			.119,
			.1085,
			-.2096,
			.01408,
			.03634,
			.015,
			-.08858,
			-.02671,
			-.173,
			-.06212,
			.04242,
			-.1941,
			-.042,
			-.2378,
			.2232,
			.02928,
			-.003636,
			.1387,
			.01023,
			-.0155,
			.1351,
			.0393,
			.03047,
			-.2473,
			-.005805,
			-.06691,
			-.09377,
			-.008736,
			.04448,
			.03507,
			.06729,
			.07819,
			-.02844,
			-.1766,
			.1119,
			-.06129,
			.1323,
			-.1618,
			.02447,
			-.03076,
			-.1052,
			-.06954,
			-.08673,
			.2015,
			.1212,
			-.05258,
			.04097,
			-.3295,
			.1397,
			.257,
			-.3545,
			.0204,
			-.03102,
			-.0231,
			-.09976,
			-.02501,
			.05168,
			-.1654,
			-.1346,
			.1455,
			-.02107,
			-.02492,
			-.1702,
			-.03233,
			-.02966,
			-.06311,
			-.1035,
			.1191,
			-.2544,
			-.04976,
			.05508,
			.2738,
			.1752,
			-.008797,
			-.02541,
			-.1898,
			-.05841,
			.3861,
			-.2753,
			-.0997,
			-.2125,
			-.3143,
			.02785,
			.1557,
			-.1059,
			-.1655,
			.19,
			-4414e-7,
			.1037,
			.3612,
			-.3089,
			-.08499,
			-.1332,
			-.2945,
			.02948,
			-.3974,
			.02418,
			.4288,
			-.5007,
			.2281,
			-.1732,
			.1321,
			.003194,
			.1329,
			.05429,
			.1856,
			-9111e-7,
			.1716,
			.1099,
			.02982,
			-.1395,
			.0922,
			-.1141,
			.07897,
			.05237,
			-.04149,
			-.1923,
			-.2234,
			.03398,
			-.09172,
			-.01657,
			-.3058,
			-.2179,
			-.1121,
			.09859,
			-.1373,
			-.04694,
			-.02902,
			-.1042,
			.01298,
			-.1666,
			.3105,
			.1583,
			-.1069,
			-.1133,
			.06354,
			.2085,
			-.03132,
			-.1124,
			.06589,
			.06577,
			.2819,
			.01018,
			.1936,
			.03941,
			.00708,
			-.03427,
			-.2803,
			.6119,
			.02251,
			.0314,
			-.2193,
			-.2117,
			.1426,
			.1631,
			.4233,
			.1607,
			-.03328,
			.1363,
			.2012,
			.257,
			-.1153,
			.3674,
			.1843,
			-.1583,
			.2177,
			-.09198,
			-.1307,
			-.06404,
			-.3777,
			.01228,
			-.05626,
			-.1614,
			.4974,
			-.04157,
			-.07231,
			.1224,
			.2803,
			-.2286,
			-.1847,
			.3018,
			.5591,
			.3019,
			.08708,
			-.007331,
			.2738,
			.2209,
			.2267,
			.3227,
			.02652,
			-.1491,
			-.1554,
			-.1275,
			.2472,
			-.2073,
			-.04694,
			.131,
			-.2479,
			.1989,
			-.06831,
			.2246,
			.02886,
			.2401,
			.1926,
			-.4119,
			.03578,
			.344,
			-.1932,
			-.1071,
			.05799,
			-.3191,
			.3103,
			-.1042,
			.06193,
			.02854,
			-.02442,
			.08557,
			-.4123,
			-.2311,
			-.1076,
			.1155,
			.03966,
			.07111,
			.3647,
			.05224,
			-.2655,
			-.03085,
			-.1314,
			-.1128,
			.2306,
			-.3362,
			.1714,
			-.2431,
			-.2047,
			.02505,
			.2107,
			.3167,
			.0256,
			-.2877,
			.3996,
			.02678,
			-.1379,
			-.003016,
			.116,
			.01166,
			.052,
			-.02554,
			-.1521,
			-.09103,
			.1895,
			.121,
			-.04065,
			.2964,
			.1586,
			-.6934,
			-.08568,
			-.2597,
			-.01986,
			-.01655,
			.1597,
			.2959,
			-.1346,
			-.07182,
			-.3048,
			.0332,
			.2037,
			.1221,
			-.1154,
			.1125,
			-.03883,
			-.285,
			.1171,
			.08355,
			.1348,
			-.08007,
			.1814,
			.07085,
			-.03918,
			.06806,
			.3908,
			.2142,
			.1813,
			.1261,
			-.2296,
			.03158,
			.2224,
			-.2567,
			-.1916,
			-.06673,
			-.3053,
			-.1032,
			-.09079,
			-.1318,
			-.2082,
			.1171,
			.07465,
			-.2754,
			-.01544,
			.1664,
			.2359,
			-.1501,
			.1468,
			-.3417,
			-.2073,
			-.0203,
			.1565,
			.545,
			-.07877,
			-.02718,
			-.1356,
			-.1774,
			.01896,
			.07096,
			-.003765,
			.1353,
			-.2986,
			.1265,
			-.1312,
			.2146,
			.02715,
			-.02324,
			.1974,
			.1178,
			-.08448,
			.1154,
			.09334,
			-.03254,
			.05367,
			.146,
			.1428,
			.1726,
			.07045,
			.2439,
			.1115,
			-.01721,
			.2754,
			-.02784,
			8292e-7,
			.02283,
			.1257,
			.001727,
			.04466,
			.001301,
			-.2189,
			.1689,
			.01024,
			.1325,
			.0461,
			-.2272,
			.05459,
			-.1186,
			.1189,
			-.1157,
			.04157,
			-.03817,
			.02424,
			-.1742,
			.1301,
			-.5476,
			.0266,
			-.114,
			-.2487,
			-.006342,
			.02209,
			.02216,
			-.09981,
			-.198,
			.08686,
			-.1136,
			-.1701,
			-.2846,
			-.2462,
			-.0256,
			-.3657,
			-.1325,
			-.2298,
			.05695,
			-.1659,
			-.02059,
			.04166,
			-.07496,
			.2828,
			.1625,
			.02399,
			.09725,
			.1143,
			.09676,
			-.1417,
			.5062,
			-.2586,
			.0441,
			-.06319,
			.2627,
			.02729,
			.1196,
			.1786,
			-.05673,
			.5944,
			.1045,
			.5172,
			-.1586,
			-.2226,
			.3514,
			.4736,
			-.1372,
			-.1943,
			.02099,
			-.0912,
			-.2267,
			.01732,
			.08916,
			-.07159,
			-.1597,
			-.2316,
			.005917,
			.03335,
			.04034,
			-.1941,
			-.008506,
			-.1718,
			-.108,
			-.007052,
			-.166,
			.1098,
			-.2681,
			.1589,
			.2206,
			-.5037,
			-.2917,
			.4509,
			.04369,
			.1749,
			.04813,
			-.18,
			.01348,
			-.3463,
			-.1205,
			.01066,
			.1742,
			-.03564,
			-.1578,
			.02953,
			-.1738,
			-.04234,
			.1955,
			.1196,
			.2421,
			-.2587,
			.04139,
			-.09584,
			.05171,
			.2235,
			-.06324,
			-.008162,
			.06763,
			.1114,
			.2275,
			-.3503,
			-.2989,
			.07998,
			.2018,
			.2322,
			.3443,
			-.1037,
			.0373,
			-.4151,
			.1871,
			.01333,
			-.3295,
			-.1397,
			.06566,
			.2412,
			.04828,
			-.3162,
			.1202,
			.1566,
			.111,
			-.1888,
			-.2687,
			-.1583,
			-.02474,
			-.0509,
			-.03654,
			-.1074,
			.4931,
			.002392,
			.0912,
			-.1029,
			.1218,
			.1357,
			-.2784,
			.3982,
			-.1405,
			-.06459,
			.02481,
			-.02066,
			-.1055,
			.01336,
			-.2251,
			-.01057,
			.0531,
			.3144,
			-.193,
			.2053,
			-.1714,
			-.1448,
			-.285,
			.03273,
			.0219,
			.2097,
			.131,
			.423,
			-.1461,
			-.083,
			-.3134,
			.09307,
			-.05062,
			-.2945,
			-.1378,
			-.096,
			.3982,
			.0101,
			-.3849,
			.07891,
			-.2848,
			-.2908,
			-.1542,
			.1184,
			-.01125,
			-.08455,
			.192,
			.1375,
			-.005762,
			.06051,
			.1042,
			-.4264,
			-.0529,
			-.146,
			-.0592,
			.05547,
			-.425,
			-.4057,
			-.005508,
			-.4347,
			.2835,
			-.2956,
			-.0866,
			.01272,
			-.213,
			.455,
			.217,
			-.2426,
			-.1884,
			-.2435,
			-.209,
			-.1013,
			.4191,
			-.01041,
			-.08688,
			.2652,
			-.1049,
			-.2429,
			-.4389,
			.1231,
			-.4732,
			.2207,
			-.05968,
			-.08376,
			-.4731,
			.2218,
			.204,
			.2352,
			.03158,
			-.2221,
			-.0774,
			.4117,
			-.02834,
			.177,
			-.1184,
			-.1802,
			.2263,
			-.02108,
			.3585,
			.3854,
			-.1039,
			.01409,
			-.07715,
			-.1139,
			-.3296,
			.3056,
			-.04117,
			-.5204,
			.0824,
			.004002,
			-.1328,
			-.03968,
			-.1769,
			-.04107,
			-.07596,
			-.2175,
			-.1039,
			-.2141,
			-.2837,
			.3443,
			-.01262,
			.03401,
			.1012,
			-.05724,
			.005423,
			-.009549,
			-.2445,
			.05352,
			.1166,
			-.1955,
			-.01119,
			-.08971,
			.1454,
			.1629,
			-.3022,
			-.201,
			.1248,
			-.09893,
			.1428,
			.1463,
			-.0693,
			.03686,
			.1,
			.3231,
			.02188,
			.02215,
			-.03352,
			-.1355,
			-.143,
			-.01243,
			.08591,
			.1299,
			-.05611,
			-.1662,
			.06035,
			-.01176,
			-.05694,
			.007387,
			.1326,
			.2086,
			-.05899,
			-.05313,
			-.03398,
			.06004,
			-.02906,
			.1688,
			-.03344,
			.09462,
			.2343,
			-.03672,
			.09016,
			.1603,
			-.311,
			.05327,
			.1415,
			-.1373,
			-.004318,
			.3584,
			-.1477,
			.1297,
			-.03074,
			-.2711,
			.1946,
			-.1572,
			.2956,
			.0696,
			.07483,
			.461,
			.04818,
			-.1275,
			.089,
			-.07989,
			.2566,
			.3277,
			.2993,
			.1555,
			.08038,
			-.02699,
			-.002586,
			.05283,
			.1106,
			-.1175,
			.1569,
			.1016,
			-.1344,
			-.02841,
			.3312,
			.03193,
			.1194,
			-.2074,
			-.3403,
			.2003,
			-.2288,
			-.1539,
			.2148,
			.08136,
			.2152,
			-.2249,
			-.05874,
			.07514,
			-.1708,
			.2718,
			.2223,
			-.07606,
			.119,
			.2368,
			-.04989,
			.1456,
			-.133,
			.002052,
			.03604,
			-.1157,
			.1371,
			.05142,
			-.1592,
			.05843,
			-.01126,
			.2459,
			.03603,
			-.1837,
			-.05872,
			.6143,
			.1034,
			.1728,
			.09433,
			.1398,
			-.1758,
			-.1226,
			.06544,
			.2094,
			.5151,
			.1216,
			-.1226,
			-.07002,
			.3801,
			-.1025,
			-.01111,
			.04547,
			-.00989,
			-.2295,
			.06799,
			-.2338,
			.05975,
			-.2032,
			-.2099,
			.1705,
			-.0045,
			.07648,
			.209,
			.3971,
			.06596,
			-.003821,
			-.304,
			.1673,
			.1672,
			-.1421,
			.1976,
			-.1731,
			-.01467,
			-.1154,
			.01515,
			-.07937,
			.01874,
			-.03175,
			-.1608,
			-.1942,
			-.002804,
			.1483,
			.01539,
			.0767,
			-.05103,
			-.02178,
			.03124,
			-.2693,
			.02071,
			.1074,
			-.2735,
			-.04467,
			.173,
			.4698,
			.07887,
			.09791,
			.001994,
			-.122,
			.08509,
			-3903e-7,
			.07942,
			-.1826,
			.3416,
			-.1146,
			.2564,
			-.33,
			-.2417,
			.1377,
			-.1785,
			.1914,
			.2596,
			.2239,
			.2004,
			-.07524,
			.07056,
			.1473,
			-.4219,
			.1324,
			.1382,
			-.1577,
			.09001,
			-.2452,
			-.05675,
			.04385,
			.2114,
			-.07367,
			-.1552,
			-.3114,
			.1743,
			.144,
			.03437,
			-.07727,
			-.4351,
			-.142,
			-.06069,
			-.1492,
			.3677,
			.01595,
			-.1263,
			-.2302,
			.1149,
			-.2191,
			-.03031,
			.191,
			8028e-8,
			-.1527,
			.1037,
			-.03056,
			-.01481,
			-.04771,
			.1515,
			.002542,
			-.07905,
			-.2249,
			-.0886,
			.1593,
			-.2965,
			.1432,
			.1268,
			.2646,
			.01345,
			.02653,
			.04723,
			.09176,
			.148,
			.05697,
			.1084,
			-.03399,
			.2072,
			.05433,
			-.4132,
			-.1321,
			.1707,
			-.0211,
			.04581,
			.1982,
			-.2882,
			.04921,
			-.05362,
			-.1412,
			-.05938,
			-.4157,
			-.07379,
			-.216,
			.04046,
			.05055,
			.0195,
			.2421,
			.08608,
			-.1308,
			.2276,
			-.02376,
			.05336,
			-.07667,
			.2504,
			-.1751,
			-.2294,
			-.05307,
			-.08957,
			-.04545,
			-.1298,
			-.001928,
			.1292,
			.07966,
			.04978,
			.1158,
			.1792,
			.1801,
			.1166,
			-.2456,
			.1973,
			.07768,
			-.06196,
			-.1885,
			.196,
			.03023,
			.3126,
			-.04107,
			-.02936,
			-.09556,
			.08347,
			.009507,
			.09379,
			.2187,
			-.1191,
			.149,
			-.1393,
			-.1162,
			-.193,
			-.00429,
			.07047,
			-.09592,
			-.04922,
			-.1005,
			-.02004,
			.06161,
			.02898,
			-.2671,
			-.0452,
			-.1014,
			-.1571,
			.09211,
			-.15,
			.06487,
			.1671,
			-.271,
			.0568,
			.01293,
			-.3791,
			.2398,
			.5633,
			-.1689,
			-.08673,
			.01965,
			-.7911,
			-.11,
			.02811,
			.3492,
			.07246,
			-.368,
			-.3355,
			-.07597,
			-.1205,
			-.1085,
			-.1022,
			.1902,
			-.2766,
			-.07007,
			-.09868,
			-.06527,
			.06322,
			.0872,
			-.3236,
			.04404,
			.06352,
			-.2658,
			.3341,
			.04375,
			.4514,
			.1094,
			.2572,
			-.1516,
			.03315,
			-.1914,
			-.1929,
			.05344,
			-.319,
			.09635,
			-.003346,
			.05115,
			-.09821,
			.05912,
			-.1525,
			-.0956,
			-.157,
			.02859,
			-.489,
			.361,
			.5545,
			.06611,
			-.01187,
			.02399,
			-.5791,
			.05815,
			.04549,
			.4717,
			-.03927,
			-.2161,
			.1216,
			.03176,
			.1551,
			-.00477,
			.057,
			.1124,
			-.1069,
			.2484,
			-.03656,
			-.1301,
			-.08306,
			.2079,
			-.223,
			.05394,
			-.01915,
			-.2731,
			-.198,
			.05793,
			-.2173,
			.1649,
			-.1933,
			-.03571,
			-.0554,
			-.1501,
			.1666,
			.2252,
			.1018,
			.06197,
			.05887,
			.1245,
			-.06762,
			-.1991,
			-.1599,
			-.08614,
			.4286,
			-.1185,
			.6031,
			.3578,
			-.2293,
			-.4851,
			.07939,
			.2706,
			.1693,
			-.06508,
			.1664,
			.07606,
			-.0648,
			-.2096,
			.4072,
			.04884,
			-.02321,
			.1029,
			-.1877,
			-.1262,
			.06514,
			.09495,
			-.05077,
			-.2837,
			.3387,
			.07272,
			-.1603,
			-.07881,
			-.1085,
			.09652,
			.0152,
			5987e-7,
			-.02316,
			.1118,
			.1661,
			-.1872,
			.1426,
			.1304,
			-.2736,
			.06542,
			.002665,
			.08243,
			-.1377,
			-.01213,
			.05723,
			-.08437,
			.1583,
			-.1184,
			.09724,
			-.06705,
			-.2746,
			-.02431,
			-.05746,
			-.01593,
			.2238,
			-.5005,
			-.166,
			.2545,
			.04325,
			-.05884,
			.06745,
			-.04281,
			-.3535,
			-.1791,
			.1604,
			-.186,
			-.03579,
			-.05738,
			-.1181,
			.09014,
			.1118,
			.01579,
			-.0163,
			.2528,
			-.1449,
			-.07833,
			.05592,
			.07427,
			-.097,
			-.0327,
			.2353,
			.02576,
			.2061,
			-.01294,
			.3087,
			-.09047,
			-.3454,
			.006119,
			-.4619,
			.1531,
			.07462,
			.1975,
			.04674,
			.01873,
			.04217,
			.1835,
			.03789,
			-.3602,
			.1096,
			-.02996,
			-.3714,
			.04082,
			.08315,
			.02384,
			.09995,
			.07663,
			.4054,
			.5019,
			-.3059,
			-.1551,
			-.1929,
			.1396,
			-.131,
			-.7188,
			.1535,
			.1595,
			-.1334,
			-.6267,
			.341,
			.1346,
			.975,
			-.1864,
			.3896,
			.0292,
			-.09549,
			.071,
			-.1176,
			.0227,
			-.3798,
			-.4027,
			-.005651,
			.2642,
			.3157,
			.3383,
			.2575,
			-.197,
			.1713,
			-.1338,
			.1977,
			.08245,
			-.2299,
			.04097,
			.01583,
			.2043,
			-.5216,
			-.2155,
			-.02051,
			-.1078,
			-.1002,
			.1571,
			.1069,
			-.08384,
			.01418,
			-.02724,
			.7444,
			-.1784,
			.06331,
			.2686,
			-.003556,
			-.07396,
			.07983,
			.2004,
			-.05622,
			-.2098,
			-.1068,
			-8055e-7,
			.1276,
			-.05399,
			.3555,
			.1917,
			-.08304,
			-.1275,
			.4077,
			-.172,
			-.1041,
			.2701,
			-.01698,
			.06089,
			.159,
			-.2612,
			-.1524,
			-.02957,
			.2872,
			-.1631,
			-.1523,
			.1726,
			-.1132,
			.01532,
			-.1209,
			.01829,
			.5027,
			-.01352,
			.1049,
			.02231,
			.176,
			-.4294,
			.1359,
			.1653,
			-.341,
			-.033,
			-.07584,
			.03609,
			.2126,
			.03338,
			-.4827,
			-.1021,
			-.00898,
			.05834,
			.0824,
			.03517,
			.2875,
			.2316,
			-.1688,
			.06217,
			-.0134,
			-.1516,
			-.1444,
			.01986,
			-.2062,
			-.2236,
			.08162,
			-.1814,
			-.02712,
			.09173,
			.04667,
			.03382,
			-.2746,
			.2624,
			-.04121,
			.001542,
			-.06268,
			.1385,
			-.3147,
			-.007406,
			-.00239,
			.06876,
			-.06901,
			.2291,
			.06485,
			.05399,
			.07115,
			-.2348,
			.2313,
			-.1165,
			-.07304,
			.2412,
			-.0722,
			-.1217,
			-.032,
			-.1165,
			-.3235,
			-.0142,
			.07136,
			.295,
			.05566,
			.06199,
			-.294,
			.0312,
			-.152,
			.02213,
			.06998,
			-.002722,
			-.3257,
			-.1968,
			-.09412,
			.3539,
			.1408,
			-.231,
			-.09113,
			.2763,
			.0442,
			.2218,
			-.02494,
			-.1409,
			-.08803,
			.1599,
			.3608,
			.04521,
			.06151,
			.1225,
			-.05421,
			-.1005,
			.104,
			-.1552,
			-.02652,
			.07184,
			.06797,
			.093,
			-.05959,
			-.1064,
			.1305,
			.2898,
			-.3444,
			.01832,
			.07176,
			-.1106,
			.1502,
			-6056e-7,
			-.09478,
			-.0225,
			-.4005,
			-.2058,
			.1711,
			.3311,
			-.1222,
			.2166,
			.1871,
			.1836,
			-.1087,
			-.007067,
			-.4152,
			.275,
			.2587,
			.03079,
			.08673,
			-.2338,
			-.07329,
			.1811,
			.07986,
			.1375,
			-.2993,
			-.01947,
			-.1465,
			-.1634,
			.05519,
			.09732,
			.07569,
			.1661,
			.3823,
			.05062,
			-.02066,
			.08598,
			-.01155,
			.2483,
			-.06486,
			.1622,
			-.04767,
			-.2807,
			-.0606,
			-.01745,
			.273,
			-.1223,
			-.3013,
			.2194,
			-.1684,
			-.1476,
			-.1678,
			-.1019,
			.1117,
			.3117,
			-.2786,
			-.1225,
			.2642,
			-.1546,
			.008746,
			.1896,
			.07499,
			-.1655,
			.07896,
			-.1181,
			-.08309,
			.1575,
			.03914,
			.2691,
			-.08267,
			-.00131,
			-.05834,
			-.001267,
			.7271,
			-.05524,
			.2787,
			-.2123,
			-.005794,
			.2088,
			.04443,
			.2728,
			-.366,
			.1965,
			.169,
			-.1859,
			.1751,
			-.1146,
			-.004153,
			.2816,
			.4043,
			.009536,
			.2615,
			.3269,
			-.1476,
			-.02205,
			.161,
			.1292,
			-.2345,
			-.1265,
			-.07648,
			.009523,
			-.2704,
			-.331,
			.08871,
			-.6328,
			-.3626,
			.5417,
			.4302,
			-.1917,
			-.8664,
			.1798,
			-.08673,
			-.04721,
			-.1535,
			.02244,
			-.05968,
			-.004818,
			-.1342,
			.2795,
			-.08103,
			-.2057,
			.1742,
			.4212,
			-.2691,
			.05163,
			.1922,
			.2264,
			-.0355,
			-.613,
			.01197,
			-.08847,
			-.2317,
			.3455,
			-.4698,
			-.392,
			.1842,
			.1026,
			.09265,
			.192,
			.4773,
			-.04631,
			.08757,
			-.02878,
			-.1545,
			-.203,
			-.2253,
			-.3261,
			-.2958,
			.1252,
			.01058,
			.02643,
			.05038,
			-.01402,
			-.0886,
			-.04987,
			.05517,
			-.1972,
			.003552,
			-.1417,
			.06022,
			.1384,
			-.1193,
			-.08363,
			-.09443,
			.07044,
			-.2189,
			-.003568,
			.1419,
			-.04449,
			.05369,
			-.1096,
			.2522,
			.3606,
			.0147,
			.01271,
			.1045,
			-.03015,
			.2105,
			-.07907,
			.09453,
			.2179,
			-.208,
			-.07397,
			.05654,
			.2838,
			-.2056,
			.2171,
			-.06255,
			-.1804,
			.1068,
			-.2108,
			.1094,
			.003702,
			.1459,
			.03139,
			-.2042,
			-.004457,
			.2112,
			.08611,
			-.1334,
			.1619,
			.2089,
			.09486,
			-.04427,
			.1089,
			-.2299,
			-.04301,
			.08655,
			-.1456,
			-.02889,
			-.269,
			.1259,
			.08999,
			-.1007,
			-.02144,
			-.07963,
			-.09308,
			.03662,
			.03729,
			-.05871,
			-.1012,
			-.0102,
			-.1646,
			-.1466,
			.2527,
			-.05182,
			.05219,
			.1038,
			-.05223,
			-.04917,
			.0878,
			.1303,
			.209,
			.05934,
			.02372,
			-.1676,
			-.01445,
			-.02171,
			-.1895,
			-.1846,
			.5171,
			-.1343,
			-.09275,
			-.04982,
			-.2289,
			-.07006,
			.06158,
			-.07855,
			-.1846,
			.06676,
			-.07264,
			.2223,
			.07111,
			.3374,
			.159,
			-.2669,
			.05308,
			-.3126,
			.02072,
			-.3465,
			.06531,
			-.428,
			.05645,
			.08417,
			-.09873,
			.3198,
			.03693,
			-.1185,
			-.2268,
			.03592,
			-.04791,
			-.04375,
			.1809,
			.008461,
			.2241,
			.004032,
			.06938,
			.07931,
			.03655,
			-.02696,
			.3773,
			.1722,
			.1217,
			.1336,
			-.006459,
			.0722,
			.1824,
			-.1348,
			-.1144,
			-.3023,
			-.1247,
			-.1322,
			-.01405,
			.1144,
			.1098,
			-.1068,
			.04016,
			-.01386,
			.0735,
			-.6205,
			.005102,
			.143,
			.1045,
			-.189,
			.1141,
			.1899,
			.03399,
			-.1054,
			-.2318,
			.1439,
			.01584,
			.07498,
			.2586,
			.2046,
			-.08551,
			.2407,
			.04925,
			.2838,
			-.07622,
			-.01298,
			.06144,
			-.09167,
			-.1188,
			.138,
			-.1233,
			.1721,
			-.06569,
			-.4517,
			.1977,
			.09125,
			-.06797,
			-.1262,
			.03056,
			.1409,
			.004183,
			.09569,
			-.2564,
			.08734,
			.05848,
			.05637,
			-.07446,
			.1061,
			.1164,
			-.2519,
			.1282,
			-.08196,
			.02139,
			-.06743,
			.07607,
			-.06416,
			.008116,
			.001989,
			-.1919,
			-.1294,
			-.1458,
			-.0131,
			-.1155,
			.002061,
			.04097,
			-.1887,
			.2137,
			.3482,
			-.2508,
			.06938,
			.09973,
			.3271,
			-.2399,
			-.02561,
			-.1366,
			-.1543,
			-.02314,
			-.101,
			.167,
			-.05551,
			.08635,
			.03148,
			.273,
			.07989,
			.007803,
			-.1757,
			.04301,
			-.1393,
			.08085,
			.3058,
			-.05052,
			.1783,
			.2514,
			.1538,
			-.001877,
			-.1775,
			-.00584,
			-.1289,
			-.1712,
			-.01324,
			-.1081,
			-.02499,
			-.05899,
			-.006019,
			-.005603,
			-.07822,
			-.2133,
			.01645,
			-.1057,
			.2394,
			.2353,
			-.3913,
			.05147,
			-.1093,
			-.03587,
			.09803,
			-.2727,
			-.09856,
			-.0933,
			.1685,
			-.04181,
			.1965,
			-.03203,
			-.1774,
			.2236,
			-.2993,
			-.01111,
			.01058,
			-.2146,
			.3265,
			.284,
			.07894,
			-.04859,
			-.3208,
			.1436,
			.2359,
			-.07944,
			-.001829,
			-.1548,
			.2815,
			.09635,
			-.07399,
			-4259e-8,
			.06691,
			-.3002,
			-.3007,
			.1262,
			.1496,
			-.2778,
			-.1289,
			-.2566,
			.1579,
			-.1054,
			.1489,
			.03451,
			.006626,
			.01054,
			.01918,
			-.004351,
			-.1297,
			-.2312,
			-.0563,
			-.07011,
			.1703,
			.03391,
			.03406,
			-.09402,
			.2797,
			-.2019,
			.2139,
			-.01999,
			-.1546,
			-.06565,
			-.1503,
			-.2202,
			-.1322,
			.00711,
			.3597,
			-.2203,
			.09924,
			-.09521,
			-.1695,
			-.2385,
			-.4138,
			.1255,
			.3324,
			-.3189,
			.1409,
			.1078,
			-.1014,
			.1334,
			.4579,
			-.0445,
			-.2438,
			-.2196,
			.1517,
			.06317,
			.01628,
			-.04374,
			-.02454,
			-.06751,
			-.1059,
			.2342,
			-.03569,
			-.1202,
			.08682,
			-.05843,
			-.1038,
			.01968,
			.1321,
			.2223,
			-.2961,
			-.006707,
			.1179,
			-.1989,
			.04623,
			-.1429,
			.09912,
			.01919,
			-.09538,
			-.5345,
			-.1932,
			-.1132,
			.0901,
			-.1153,
			-.1388,
			-6966e-8,
			.1661,
			-.1956,
			.06037,
			.2073,
			-.1246,
			.2726,
			-.02623,
			-.1984,
			.06223,
			-.1747,
			-.1017,
			-.2313,
			-.3231,
			.04153,
			.1907,
			-.07528,
			-.1508,
			-.008212,
			.1083,
			-.1665,
			.0605,
			.07339,
			.07025,
			.209,
			-.04955,
			-.03965,
			.142,
			-.08042,
			.0891,
			.09342,
			.1278,
			.3774,
			.006757,
			.1938,
			-.1646,
			-.05785,
			-.3708,
			-.03145,
			-.02578,
			.2299,
			-.01956,
			.0666,
			-.02892,
			.3526,
			.1648,
			-.1566,
			-.1251,
			-.1152,
			.01161,
			.07566,
			.08433,
			.1593,
			.1558,
			.1215,
			-.04092,
			-.02599,
			-.03345,
			-.02603,
			-.07164,
			.0496,
			-.2272,
			.0291,
			-.04575,
			-.1606,
			-.04113,
			-.2322,
			.03584,
			.1701,
			-.01397,
			.08157,
			-.03105,
			.2081,
			-.004437,
			.05502,
			.02957,
			.1133,
			.03839,
			.1321,
			-.1707,
			.153,
			-.04624,
			.162,
			.3977,
			-.1102,
			.08737,
			-.1506,
			-.01708,
			-.04927,
			-.03367,
			-.1009,
			-.03895,
			.09437,
			-.2054,
			.1005,
			.1822,
			-.06657,
			.1657,
			.01069,
			.1688,
			-.004552,
			.1124,
			.1734,
			-.204,
			-.171,
			-.04368,
			.1195,
			.09998,
			.03955,
			.1587,
			-.02734,
			-.02105,
			-.03205,
			-.2432,
			.0635,
			.09945,
			.2349,
			.08869,
			-.06559,
			-.07332,
			.1242,
			-.1862,
			.3224,
			.1083,
			.1946,
			-.1753,
			.1226,
			.01886,
			-.02568,
			.2637,
			-.2964,
			-.0173,
			-.3288,
			.2126,
			.06146,
			.02759,
			-.02293,
			-.02832,
			.08886,
			-.07841,
			-.2064,
			-.1779,
			.1015,
			.1834,
			-.1114,
			-.01575,
			.04818,
			-.08974,
			.08319,
			.08961,
			.03489,
			-.1457,
			.2402,
			-.1129,
			-.1151,
			.302,
			-.2342,
			.1474,
			.003396,
			-.1905,
			-.1268,
			-.09329,
			.09795,
			-.02736,
			.1887,
			.09238,
			-.07291,
			-.01621,
			-.1776,
			.0737,
			-.07823,
			-.01209,
			.03303,
			-.2732,
			.1897,
			-.07196,
			-.1056,
			-.00755,
			-.1826,
			.1053,
			-.01159,
			-.006355,
			-.04792,
			-.1924,
			-.05889,
			-.1992,
			.1045,
			.03081,
			.2518,
			-.1871,
			.1054,
			.004958,
			.09814,
			.2184,
			.0215,
			.04587,
			-.02332,
			-.05618,
			-.2689,
			.3231,
			.1927,
			.1035,
			.1471,
			.04385,
			-.0233,
			.07638,
			-.07884,
			-.0762,
			-.3021,
			.2786,
			.142,
			.02517,
			-.07654,
			.1266,
			-.01859,
			-.296,
			.06232,
			.03508,
			-.1351,
			.06499,
			-.06666,
			.0759,
			-.06919,
			.274,
			-.156,
			-.1742,
			7465e-7,
			-.1524,
			-.01708,
			.1076,
			-.3859,
			.1974,
			.1581,
			-.2561,
			-.3981,
			-.03325,
			-.03037,
			.1382,
			-.01511,
			-.426,
			-.136,
			.005379,
			.1066,
			.1313,
			.1674,
			.1113,
			.03176,
			-.1674,
			.1196,
			.01576,
			-.3739,
			-.1927,
			.228,
			-.425,
			-.02736,
			-.1032,
			-.07,
			-.1435,
			.02424,
			.005557,
			.03712,
			.02051,
			-9134e-7,
			-.2479,
			.1829,
			.06555,
			.3281,
			.01606,
			.001536,
			.01096,
			-.03792,
			-.1742,
			.07323,
			-.03481,
			.1414,
			.3428,
			.2281,
			-.1179,
			-.1019,
			-.1934,
			.0342,
			.0369,
			.05182,
			-.06532,
			.6266,
			-.02359,
			.262,
			-.01325,
			.2152,
			-.3046,
			.03848,
			-.1323,
			.07494,
			.00313,
			-.005858,
			-.2586,
			.06899,
			.159,
			.0589,
			.2995,
			-.04285,
			.06026,
			.08303,
			.2648,
			.05371,
			.1504,
			-.02767,
			.08993,
			.03936,
			-.1477,
			.1978,
			-.09721,
			.01184,
			-.00767,
			.04161,
			-.1472,
			-.1565,
			-.353,
			-.0807,
			.3671,
			.2357,
			.2562,
			-.168,
			.3059,
			.06409,
			.1319,
			-.2127,
			-.3757,
			.06654,
			-.03524,
			-.08861,
			.09176,
			.05742,
			.1219,
			-.1021,
			-.1393,
			-.1106,
			-.04097,
			-.03045,
			.06907,
			.1143,
			.176,
			.03133,
			-.03914,
			.03212,
			.4202,
			-.04866,
			.006838,
			.08264,
			.01259,
			.04958,
			.04398,
			-.0213,
			.1234,
			-.1309,
			-.006452,
			.11,
			.0627,
			-.09072,
			-.1442,
			-.03883,
			-.1977,
			.1736,
			-.2549,
			.03574,
			.0528,
			.01157,
			-.1754,
			.183,
			.07341,
			-.2232,
			.1484,
			-.1147,
			-.07622,
			-.1158,
			.0757,
			.1671,
			-.1193,
			-.1025,
			.1364,
			-.1201,
			-.1524,
			-.2515,
			-.2595,
			.05627,
			-.1012,
			.1312,
			-.2027,
			.08697,
			.1873,
			.1159,
			.0747,
			.06585,
			.04042,
			-.1492,
			-.00289,
			-.05576,
			-.584,
			-.02657,
			.1292,
			-.03057,
			-.01356,
			-.04312,
			-.02093,
			.09852,
			-.2335,
			.0954,
			-.1699,
			-.2111,
			-.0684,
			-.05805,
			-.1204,
			.01769,
			-.264,
			.03372,
			-.2725,
			.2375,
			.02276,
			.1469,
			-.08046,
			-.004125,
			-.2029,
			.2073,
			-.07743,
			-.08292,
			.04197,
			-.7525,
			.03082,
			.05331,
			.004395,
			-.5009,
			-.06226,
			-.1777,
			-.1708,
			-.1193,
			-.1561,
			.2038,
			.003604,
			.07647,
			.08819,
			.1299,
			.1138,
			.2412,
			.04802,
			-.03322,
			-.07787,
			-.1901,
			.1065,
			.008095,
			.1478,
			.1363,
			.05329,
			.335,
			.1256,
			-.01832,
			.277,
			.3425,
			-.1637,
			-.3939,
			-.02896,
			.08405,
			.1085,
			-.01869,
			-.1837,
			-.3227,
			.1451,
			-.09212,
			.1215,
			-.1445,
			.05641,
			.1353,
			-.2022,
			.07746,
			-.2164,
			-.1079,
			-.0506,
			.1147,
			.07019,
			.1582,
			-.1582,
			.03796,
			-.01058,
			.2957,
			-.2072,
			-.06344,
			.04161,
			.03882,
			-.292,
			.1872,
			.01921,
			-.2742,
			.08457,
			.02286,
			.08928,
			.08942,
			-.05483,
			.174,
			-.1341,
			-.1382,
			-.1238,
			.2007,
			-.005701,
			.2807,
			-.225,
			-.004829,
			.06487,
			.05455,
			.006582,
			-.08913,
			-.2839,
			.0636,
			-.01902,
			.1001,
			.1225,
			.3232,
			-.006338,
			.1097,
			.1925,
			.1144,
			.0776,
			-.03776,
			-.01353,
			-.02944,
			.08468,
			.1815,
			-.02854,
			-.1299,
			.02123,
			.00835,
			.1928,
			.08692,
			-.2032,
			.04463,
			-.01565,
			.07716,
			.109,
			.04251,
			-.004119,
			-.1565,
			.01386,
			-1953e-7,
			.02659,
			.03596,
			.02865,
			-.003513,
			-.02998,
			.02151,
			-.1849,
			-.1082,
			-.05333,
			.1067,
			-.07127,
			-.01825,
			-.01688,
			-.1551,
			.02855,
			-.06709,
			-.009629,
			-.1452,
			-.01553,
			.1496,
			.1463,
			.09025,
			-.1206,
			.03815,
			.1912,
			.09304,
			-.003943,
			.06804,
			-.02665,
			-.01191,
			-.04173,
			-.0294
		],
		[
			-.1503,
			-.2896,
			-.3743,
			.4175,
			-.05869,
			.2297,
			.09515,
			-.1149,
			.2541,
			-.1233,
			-.001155,
			.03813,
			-.04674,
			-.1701,
			-.06486,
			.2333,
			.07737,
			-.2671,
			.2891,
			.1704,
			-.1915,
			.09847,
			-.09828,
			-.09317,
			-.04009,
			.2491,
			.2565,
			-.02887,
			.4042,
			-.267,
			-.001297,
			.161,
			-.2386,
			.3039,
			.1915,
			3215e-7,
			.1922,
			.1073,
			.4266,
			.2968,
			-.06398,
			-.009484,
			-.08778,
			.06301,
			-.1987,
			-.09116,
			-.1046,
			-.1704,
			-.171,
			-.374,
			.02077,
			.3399,
			.05642,
			-.2848,
			-.05305,
			.4183,
			.04409,
			-.5017,
			-.3048,
			-.1118,
			-.1575,
			.1099,
			-.1136,
			-.04349,
			.06262,
			.0835,
			-.09504,
			-.1896,
			.2186,
			-.1299,
			.05324,
			-.06892,
			-.2095,
			.1641,
			-.4332,
			-.04864,
			.2316,
			-.09858,
			.003784,
			-.03641,
			-.1756,
			.1389,
			-.09022,
			.02625,
			.08812,
			.2715,
			.3082,
			.1772,
			.6552,
			-.03973,
			.1719,
			.1055,
			.01353,
			.2628,
			.1705,
			.1641,
			-.2359,
			.1163,
			-.3806,
			-.1127,
			.1195,
			-.0427,
			-.06835,
			.2034,
			-.05627,
			.2008,
			.1159,
			-.3129,
			-.236,
			-.03849,
			.3094,
			.4719,
			-.2073,
			-.4971,
			.1213,
			.1406,
			.06616,
			.07636,
			.1161,
			-.2412,
			-.1078,
			.1701,
			.4535,
			.3756,
			.2698,
			.06903,
			-.2907,
			-.1543,
			-.3351,
			-.1741,
			.1971,
			.2891,
			-.3972,
			-.3444,
			-.1268,
			-.1786,
			-.5182,
			-.09335,
			.03745,
			.3837,
			.1931,
			-.07255,
			-.05125,
			-.2274,
			-.06771,
			-.006142,
			.1959,
			.1549,
			.2861,
			.04171,
			-.141,
			.1014,
			.06586,
			-.1487,
			.117,
			.1419,
			-.2076,
			-.1162,
			.3135,
			-.04097,
			.05119,
			-.0738,
			.01402,
			.09507,
			-.04087,
			.06407,
			.03632,
			-.2072,
			.3262,
			.2083,
			.1536,
			.2047,
			.09678,
			.01962,
			-.1247,
			.1448,
			-.4634,
			-.005781,
			-.08021,
			-.2023,
			.009178,
			.3758,
			-.03808,
			-.1906,
			-.221,
			-.1075,
			-.07966,
			.3701,
			.1335,
			.03895,
			-.1534,
			.3056,
			.03349,
			-.4679,
			.2858,
			-.02715,
			-.2883,
			-.1525,
			-.4542,
			-.01899,
			.2364,
			.1194,
			.2908,
			-.2008,
			.2418,
			-.1824,
			-.08454,
			-.1149,
			-.01049,
			.1208,
			-.1648,
			.2768,
			.305,
			-.2853,
			-.1164,
			-.08423,
			.1436,
			-.024,
			.1719,
			.1975,
			.1756,
			-.2026,
			-.06938,
			-.355,
			-.1189,
			.2417,
			.1374,
			.1263,
			.1285,
			-.1568,
			-.0347,
			.2095,
			.07622,
			.05165,
			-.0715,
			-.1654,
			-.1143,
			.01375,
			-.1336,
			.1455,
			-.1195,
			.1568,
			-.104,
			.01541,
			-.287,
			-.06838,
			.02562,
			-.08954,
			-.6154,
			-.2112,
			.4214,
			-.2787,
			.3955,
			-.0592,
			-.06843,
			.01978,
			-.1466,
			.257,
			.372,
			.2983,
			.1416,
			.1046,
			-.05307,
			-.1231,
			-.03714,
			.009259,
			.06329,
			.2151,
			-.1847,
			-.1417,
			.09318,
			.3915,
			-.3245,
			.2721,
			-.3252,
			-.3504,
			-.5792,
			.1592,
			-.1011,
			-.05739,
			-.1281,
			-.2254,
			-.1141,
			.2356,
			.3098,
			.23,
			-.04783,
			.2298,
			-.1772,
			.08936,
			-.1994,
			.0147,
			-.3711,
			.007809,
			-.2534,
			.05073,
			.3324,
			-.1382,
			-.3714,
			.1399,
			-.14,
			.1901,
			-.2624,
			.05618,
			-.00103,
			.05937,
			-.01017,
			.2772,
			9767e-8,
			-.03707,
			-.146,
			.3052,
			.1471,
			.2285,
			-.1978,
			-.04697,
			-.4906,
			.1338,
			.1256,
			.07723,
			-.03323,
			.08927,
			-.3906,
			-.1635,
			.2029,
			.0616,
			.2078,
			-.1218,
			-.1534,
			-.2872,
			-.04573,
			-.09397,
			-.3028,
			-.06761,
			-.04268,
			-.1326,
			-.111,
			-.112,
			-.1543,
			-.2945,
			.0116,
			1808e-9,
			.05094,
			-.1185,
			.2521,
			.2793,
			-.3635,
			.4039,
			-.006817,
			-.1559,
			-.02415,
			-.273,
			-.01755,
			.177,
			.177,
			.0936,
			.4604,
			-.4275,
			-.4139,
			.1701,
			.02484,
			.2032,
			.05072,
			-.2111,
			.147,
			.2101,
			-.3221,
			.05641,
			-.1238,
			-.4066,
			-.1068,
			.1132,
			-.2473,
			-.1958,
			.2499,
			.09862,
			.04252,
			.05003,
			.2578,
			-.07362,
			.1583,
			-.01635,
			.327,
			-.06134,
			-.2168,
			.1651,
			-.1842,
			-.1292,
			.2184,
			.0853,
			-.1002,
			.05233,
			-.06329,
			-.247,
			-.2656,
			-.1181,
			-.01333,
			.4696,
			-.2858,
			-.2591,
			.1931,
			-.6143,
			-.1541,
			.2147,
			.0407,
			-.0973,
			.05265,
			-.05146,
			.1016,
			-.0704,
			.3762,
			.2541,
			.1543,
			-.221,
			.2343,
			.001266,
			.006114,
			.1466,
			-.2392,
			-.1741,
			-.008207,
			.09664,
			-.3076,
			-.1679,
			-.2487,
			-.2042,
			-.1747,
			.1189,
			.3564,
			.02977,
			.03992,
			.09663,
			-.3353,
			.1517,
			.3596,
			.1594,
			-.3445,
			-.1424,
			.02926,
			.3468,
			.09498,
			.2275,
			.3123,
			.04975,
			-.3376,
			-.177,
			-.006796,
			.3096,
			.3104,
			.2727,
			-.09507,
			-.1767,
			.07213,
			.02142,
			.1071,
			.1111,
			.03076,
			-.05874,
			.0943,
			.2519,
			-.4472,
			.4855,
			-.3171,
			.1102,
			-.2387,
			.1352,
			-.1299,
			.03306,
			.2907,
			.07244,
			.1213,
			.1119,
			-.209,
			-.2957,
			.477,
			.3564,
			.089,
			.0975,
			-.1651,
			-.3818,
			-.4392,
			.02737,
			-.1062,
			.05194,
			.2311,
			-.09811,
			.1331,
			-.07211,
			.1937,
			.06793,
			-.4174,
			-.03072,
			-.1848,
			-.1913,
			.105,
			.1294,
			-.1231,
			-.3853,
			.3283,
			-.2323,
			-.1921,
			.119,
			-.1691,
			-.02858,
			.07848,
			.1673,
			.08578,
			-.0474,
			.1858,
			-.08388,
			.3647,
			-.002121,
			.1878,
			-.2639,
			-.21,
			-.1637,
			.04188,
			.04772,
			.1823,
			.02448,
			.1548,
			.3439,
			-.5801,
			-.4196,
			-.3091,
			.1475,
			.2531,
			.03778,
			-.1038,
			.06847,
			.02151,
			.4082,
			-.3331,
			.01888,
			.3954,
			-.3631,
			.3661,
			.1556,
			.1605,
			.008879,
			.1728,
			-.3829,
			-.0349,
			.6231,
			.336,
			-.09661,
			-.04881,
			-.4668,
			.4065,
			.08184,
			-.04693,
			.3425,
			.154,
			-.04786,
			-.2927,
			.0215,
			.02047,
			.008364,
			.07493,
			.02174,
			.2202,
			-.06957,
			.03068,
			.08524,
			.4234,
			-.3042,
			.4133,
			.1857,
			.362,
			.2693,
			.07361,
			.244,
			.2388,
			.2951,
			-.01038,
			-.2243,
			-.1863,
			-.2941,
			-.08653,
			-.03199,
			-.01315,
			-.2743,
			-.1357,
			.2629,
			-.1955,
			-.2698,
			.3732,
			.04434,
			.1984,
			.01872,
			-.07342,
			.1348,
			-.1835,
			-.0402,
			-.08517,
			.09022,
			.2235,
			-.1669,
			-.04391,
			-.2469,
			-.07085,
			.05614,
			-.3734,
			-.1283,
			.1383,
			-.1814,
			-.2288,
			.1419,
			-.1311,
			-.1341,
			-.1843,
			.145,
			-.05663,
			-.1993,
			-.09484,
			-.1202,
			.1018,
			-.373,
			-.2475,
			-.1025,
			.04696,
			.1051,
			.1132,
			-.1499,
			.115,
			-.1226,
			.07521,
			-.0184,
			.6887,
			-.132,
			.1662,
			-.04359,
			.07983,
			.1421,
			-.04645,
			.02058,
			.3892,
			-.1858,
			.03836,
			.1938,
			.03372,
			-.1103,
			.05753,
			.1349,
			-.02606,
			.414,
			.0327,
			-.01565,
			.02917,
			-.0643,
			-.1628,
			-.2205,
			-.1249,
			.1682,
			.06831,
			-.4593,
			.2385,
			-.3054,
			-.01916,
			.4287,
			.237,
			.1219,
			-.02081,
			.2357,
			-.115,
			.1087,
			.1659,
			.3703,
			.4424,
			-.2269,
			-.09802,
			-.2656,
			.2054,
			.05331,
			.2892,
			-.1834,
			.0673,
			-.3068,
			.3425,
			-.1479,
			.07069,
			.6729,
			.2866,
			.4259,
			-.1076,
			-.02247,
			.2135,
			.1068,
			.1776,
			-.2336,
			-.2582,
			-.1437,
			.4028,
			.1703,
			-.1678,
			.05872,
			-.2873,
			.03091,
			.1475,
			-.04925,
			.1571,
			.3721,
			.06717,
			.2026,
			-.1212,
			.3507,
			.1531,
			.002988,
			.2597,
			-.3436,
			.01855,
			.4419,
			.009741,
			.07077,
			.08665,
			.4519,
			.182,
			-.4474,
			.1379,
			.04669,
			.1327,
			-.04277,
			-.00431,
			-.2309,
			.2583,
			-.321,
			.3148,
			.08524,
			-.1117,
			-.2277,
			.5359,
			-.3304,
			.02212,
			-.177,
			-.2322,
			.01,
			-.4227,
			.1657,
			-.1042,
			.2011,
			.07951,
			.07176,
			.2904,
			.2908,
			-.01466,
			-.1371,
			-.01993,
			-.04746,
			-.2144,
			.1593,
			.2428,
			.5169,
			-.1967,
			-.1888,
			-.09331,
			-.1047,
			-.1267,
			.08979,
			.168,
			-.3554,
			-.1546,
			.2142,
			-.1294,
			.05536,
			-.1816,
			.1132,
			.1045,
			.1457,
			.0995,
			-.004373,
			-.1811,
			-.2612,
			.03152,
			.2857,
			.1627,
			.2654,
			.2427,
			-.09664,
			-.39,
			.004379,
			-.2299,
			.02871,
			-.04291,
			-.406,
			.2629,
			-.2433,
			.2283,
			-.05664,
			-.1479,
			-.6656,
			.2298,
			.1098,
			.04183,
			.3865,
			.1963,
			.1299,
			-.1257,
			.1151,
			-.07057,
			.002008,
			.1998,
			.1846,
			-.1506,
			-.1322,
			.1027,
			.04377,
			-.0696,
			.025,
			-.06197,
			-.0678,
			.1733,
			.1341,
			.2012,
			-.07006,
			.4911,
			-.3016,
			.2572,
			-.2893,
			-.4649,
			.04937,
			.009696,
			-.1403,
			.2804,
			-.128,
			.08459,
			.02287,
			.09458,
			-.06029,
			-.213,
			.1557,
			.08327,
			.2482,
			-.103,
			-.1331,
			.2049,
			-.1452,
			-.0405,
			.1765,
			-.07604,
			-.08364,
			-.002062,
			.2948,
			-.004179,
			-.09514,
			-.01325,
			.2045,
			-.09415,
			.08977,
			-.3191,
			.5032,
			-.047,
			-.4958,
			-.08998,
			.4428,
			.09182,
			-.0721,
			.1101,
			.07787,
			.2527,
			.0152,
			.01167,
			-.07103,
			.1643,
			.1723,
			-.385,
			-.1605,
			.02472,
			.3455,
			-.4253,
			.1223,
			.4777,
			-.2166,
			.07087,
			-.2022,
			.1216,
			.08977,
			-.08903,
			-.2733,
			.2964,
			-.07921,
			-.05198,
			.105,
			.03262,
			.1441,
			-.0318,
			-.1258,
			-.3394,
			.01567,
			.01887,
			.05494,
			-.1059,
			.1806,
			-.3429,
			-.04432,
			-.1258,
			-.03137,
			.1193,
			.1449,
			-.04029,
			-.07202,
			-.1859,
			-.2896,
			-.3669,
			.3112,
			-.3025,
			.04217,
			-.3227,
			.3194,
			.2157,
			.06632,
			-.05618,
			-.08974,
			.07124,
			-.1253,
			-.1737,
			-.1653,
			.00645,
			-.003022,
			-.08002,
			.01887,
			.1112,
			.06108,
			-.05495,
			.2499,
			-.2107,
			-.1945,
			.3642,
			-.4396,
			-.4118,
			-.2912,
			.008219,
			-.009243,
			-.1136,
			.008608,
			-.4283,
			.2173,
			.1918,
			.06493,
			.1303,
			.01457,
			-.01645,
			.1033,
			.02864,
			.2845,
			.1241,
			-.3826,
			-.1913,
			-.02568,
			.119,
			.122,
			.1824,
			-.01252,
			-.1949,
			.003256,
			-.2561,
			-.006059,
			.006967,
			.2834,
			.09858,
			-.004105,
			.3967,
			-.3206,
			.004486,
			-.2273,
			.1827,
			.1899,
			.1801,
			.1027,
			-.292,
			.0857,
			-.5504,
			-.0403,
			.3154,
			-.1486,
			.09391,
			-.3883,
			.03936,
			.07804,
			.05766,
			-.41,
			.1212,
			-.2169,
			-.4039,
			-.2058,
			.2678,
			.321,
			.06813,
			.2192,
			.008229,
			-.2125,
			.2546,
			-.02882,
			.1283,
			.2218,
			-.01815,
			-.09924,
			-.173,
			-.4755,
			-.1754,
			-.02564,
			-.237,
			.007876,
			-.2069,
			-.3263,
			.2405,
			.503,
			-.2161,
			-.06334,
			-.2714,
			-.001717,
			.4744,
			-.1546,
			-.2999,
			-.2175,
			.01318,
			-.09771,
			-.1672,
			-.1674,
			-.0147,
			-.1229,
			.2594,
			.1151,
			-.1039,
			-.01773,
			-.2966,
			-.03257,
			.1523,
			-.1312,
			-.05767,
			-.1656,
			.4091,
			.351,
			-.1016,
			-.149,
			.02437,
			.01755,
			-.1416,
			-.02064,
			.1235,
			-.3608,
			.212,
			-.1115,
			.3384,
			-.009953,
			.06414,
			-.05793,
			-.1336,
			.2175,
			.3507,
			.1397,
			-.1668,
			-.005753,
			-.4624,
			-.2478,
			-.09638,
			-.06546,
			-.3499,
			-.289,
			.005966,
			-.388,
			-.0889,
			.05455,
			-.1609,
			-.1233,
			.208,
			-.3148,
			.1301,
			-.2679,
			-.008674,
			-.02179,
			-.08305,
			-.5888,
			-.009547,
			-.2785,
			.01139,
			.1601,
			.4729,
			-.474,
			-.02506,
			-.001627,
			-.2254,
			-.0981,
			-.2382,
			.01567,
			-.14,
			-.1156,
			-.03561,
			-.3647,
			.02222,
			.109,
			.07056,
			-.08238,
			.1269,
			-.06856,
			.4858,
			.1044,
			.1325,
			.1741,
			.3186,
			-.006089,
			.1219,
			-.258,
			-.07094,
			.06572,
			-.1467,
			-.1013,
			.2576,
			.1094,
			.06234,
			-.05317,
			.0387,
			.4317,
			.002636,
			-.2214,
			-.2339,
			-.07331,
			-.3584,
			.04037,
			-.1021,
			-.09383,
			-.1618,
			.09945,
			.2003,
			-.02695,
			-.1848,
			.6248,
			-.08146,
			.1574,
			.4014,
			-.2196,
			-.1552,
			-.02419,
			-.1871,
			.3048,
			-.08719,
			-.3524,
			-.106,
			-.09193,
			-.1001,
			.014,
			-.01997,
			-.1946,
			.2538,
			.09478,
			.2837,
			-.3904,
			-.4313,
			.1422,
			-.04984,
			-.08249,
			.1436,
			-.1577,
			.1541,
			-.08314,
			.2101,
			-.0635,
			-.07281,
			-.1009,
			-.05302,
			-.2176,
			.02325,
			.3258,
			-.09881,
			.2605,
			-.1811,
			-.4377,
			.1459,
			.06235,
			-.03516,
			.177,
			-.07784,
			-.03502,
			-.06733,
			-.06514,
			.04607,
			.1015,
			-.2049,
			.04483,
			.05444,
			.4608,
			.1598,
			.4361,
			-.05008,
			.3606,
			.2269,
			.1241,
			-.2845,
			.3265,
			-.282,
			-.1055,
			.2145,
			-.06944,
			.1248,
			.1326,
			.3482,
			.2135,
			-.04231,
			-.1574,
			.2673,
			.1624,
			-.08116,
			-.02936,
			-.2612,
			-.05078,
			-.1739,
			.04643,
			.1158,
			.05375,
			-.1174,
			-.1233,
			.02663,
			.1909,
			-.01182,
			.3058,
			.03722,
			-.02185,
			.4102,
			-.4088,
			.2501,
			-.2069,
			.05969,
			-.1513,
			-.1277,
			.09516,
			-.07469,
			-.01648,
			-.06051,
			-.1142,
			-.04569,
			.03222,
			-.2674,
			.01483,
			.3049,
			.02397,
			-.4023,
			.388,
			.09283,
			.1553,
			.415,
			-.1808,
			-.0876,
			.1212,
			-.15,
			.05462,
			.1995,
			.6058,
			-.1323,
			-.05607,
			-.07894,
			-.4777,
			-.2077,
			-.01244,
			-.02471,
			-.04103,
			-.171,
			.0388,
			-.1066,
			-.1602,
			-.1145,
			-.1787,
			.07836,
			-.1287,
			.1736,
			-.1626,
			.00786,
			.04007,
			.3005,
			.3018,
			.3746,
			-.0425,
			-.1016,
			-.1902,
			.09191,
			.5976,
			-.2903,
			.1261,
			-.09564,
			.06419,
			.1399,
			-.008547,
			-.1695,
			.2614,
			.1072,
			-.4432,
			.1097,
			-.03608,
			.1375,
			-.01115,
			.2434,
			-.04192,
			-.003799,
			-.1782,
			-.3306,
			.107,
			-.0542,
			.05637,
			.1714,
			-.142,
			.06281,
			.1458,
			.009254,
			.2893,
			.3318,
			-.4006,
			-.2087,
			-.1348,
			.4464,
			.02078,
			-.02223,
			-.1484,
			.3429,
			-.2227,
			.1285,
			-.1825,
			.1531,
			-.1407,
			-.04273,
			.1248,
			-.06181,
			.5171,
			.101,
			.2405,
			.3115,
			-.1752,
			.04099,
			-.4188,
			.1263,
			-.02194,
			.05984,
			-.0211,
			-.3107,
			-.3504,
			.1085,
			-.3718,
			.0343,
			-.3973,
			-.02911,
			-.201,
			-.1168,
			-.06836,
			.3072,
			-.03646,
			.3344,
			-.2955,
			.02872,
			.04812,
			.1534,
			-.03759,
			.09084,
			.2301,
			-.4115,
			.593,
			.219,
			.09456,
			.1265,
			-.1641,
			.2734,
			.1622,
			.1296,
			-.3531,
			-.1075,
			.1383,
			.1215,
			.02874,
			.09166,
			-.3992,
			-.4353,
			-.09763,
			.09223,
			.03717,
			.4768,
			-.1031,
			.2778,
			-.3495,
			-.09349,
			-.4335,
			-.1895,
			.08978,
			-.135,
			.1676,
			-.01064,
			.1876,
			-.3203,
			.278,
			-.2829,
			-.3641,
			.02799,
			-.5043,
			-.09061,
			.5516,
			.2307,
			5749e-7,
			-.04492,
			-.1304,
			-.3184,
			.1444,
			.195,
			.2474,
			.4537,
			.07824,
			.3155,
			.3659,
			.1061,
			.5634,
			.24,
			.2987,
			.1529,
			.2886,
			-.0195,
			-.1663,
			-.3724,
			.0757,
			-.132,
			.1724,
			-.06085,
			-.2724,
			-.07302,
			-.2165,
			.2058,
			-.2862,
			.2195,
			.1194,
			.6479,
			.001091,
			.1181,
			-.02861,
			.4044,
			-.004545,
			.1325,
			-.08572,
			-.2537,
			.03581,
			-.2005,
			-.07743,
			-.3638,
			.2552,
			-.09253,
			-.3689,
			-.1055,
			.2635,
			-.0662,
			-.001435,
			.368,
			-.1541,
			-.04258,
			-.2199,
			.2582,
			-.06959,
			.09661,
			-.03785,
			-.07352,
			.1797,
			-.1034,
			-.0547,
			-.08806,
			-.1966,
			-.3737,
			.3775,
			.4538,
			-.1671,
			.06913,
			.0321,
			.05927,
			.05856,
			-.4918,
			-.1841,
			.1314,
			-.1891,
			.05657,
			.3002,
			-.3736,
			.1167,
			.3304,
			-.3208,
			-.3614,
			-.3484,
			-.021,
			.05981,
			-.06422,
			.2786,
			-.03781,
			.2325,
			-.2744,
			-.427,
			.2771,
			.3558,
			-.06378,
			.002289,
			-.1802,
			-.07603,
			-.3232,
			.168,
			9169e-7,
			.13,
			.2475,
			-.4472,
			-.2481,
			.3225,
			.5065,
			.2762,
			.1462,
			.175,
			.184,
			-.1938,
			-.1018,
			-.05958,
			-.01423,
			.17,
			-.03407,
			-.188,
			.1355,
			.1384,
			-.1988,
			.09357,
			.4546,
			.2175,
			-.06487,
			-.456,
			-.002735,
			.05331,
			.2676,
			.293,
			.0101,
			.0195,
			.1747,
			.1219,
			.08306,
			.1275,
			.2493,
			.1492,
			-.2831,
			.1044,
			.07509,
			-.1187,
			-.304,
			.2279
		],
		[
			-.313,
			-.551,
			.5098,
			.1877,
			-.0837,
			.6256,
			.2804,
			-.3226,
			.05536,
			.1681,
			-.1367,
			.3311,
			-.2577,
			.4184,
			-.1374,
			.02226,
			.3173,
			-.6664,
			.3292,
			-.3496,
			.3502,
			-.007826,
			.4612,
			-.2162,
			.4686,
			-.3811,
			.1666,
			-.3558,
			.1043,
			.6596,
			.1771,
			-.7129,
			.2212,
			.1541,
			-.2588,
			.5374,
			-.5426,
			.2067,
			-.02248,
			.0276,
			-.2404,
			-.6651,
			-.1934,
			.2486,
			.4702,
			-.003268,
			-.2059,
			.7476,
			.5183,
			.3908,
			-.2257,
			.09828,
			-.7017,
			.6755,
			.1537,
			-.4986,
			-.03671,
			.1279,
			-.1344,
			-.5521,
			.07964,
			-.3298,
			-.6345,
			-.2349,
			-.6544,
			-.03383,
			-.1747,
			.5085,
			-.2539,
			.2753,
			.09411,
			.5728,
			-.07775,
			.4122,
			-.3628,
			-.4314,
			.1985,
			-.4555,
			-.6862,
			.4504,
			.2173,
			-.08628,
			-.1273,
			-.5315,
			-.3106,
			.2079,
			-.6086,
			-.07115,
			.2211,
			.5437,
			-.4519,
			.3812,
			7386e-7,
			.08742,
			-.6239,
			.4944
		]
	],
	"biases": [
		[
			-.05385,
			.2225,
			-.4263,
			-.1537,
			.4086,
			.06084,
			.135,
			-.2314,
			.1162,
			.04243,
			.258,
			-.2931,
			-.516,
			-.192,
			.23,
			.04835,
			-.2947,
			.1399,
			-.02139,
			.1348,
			-.3202,
			-.2262,
			-.1904,
			-.1562,
			-.1116,
			.04364,
			-.2627,
			.07069,
			.6216,
			.2146,
			-.0669,
			-.1048,
			.2948,
			.5919,
			.4279,
			-.0211,
			-.09198,
			-.02686,
			-.1647,
			.263,
			.2772,
			-.1628,
			-.05355,
			-.1615,
			.3184,
			-.2008,
			-.0597,
			.1027
		],
		[
			-.2322,
			-.2139,
			-.1851,
			-.3414,
			-.1503,
			.1666,
			-.07065,
			.2099,
			-.1073,
			-.1538,
			.04772,
			.03508,
			.04594,
			.2534,
			-.06707,
			-.2453,
			.05446,
			-.2576,
			.1958,
			.1527,
			.3271,
			.06726,
			-.1067,
			-.02087,
			.01082,
			.3509,
			-.3154,
			.318,
			.08926,
			-.1522,
			-.07742,
			-.4488
		],
		[
			.03075,
			.05856,
			-.2455
		]
	]
}];
// ../../work/w/calls/server/domain/estimate/pair.ts
/** Share of the ensemble in the common worth. */
var ensembleShare = .55;
/** The ensemble's worth in kg/h is squeezed to -1..1 at this scale, so that a strong flow does not outvote the judge. */
var squeezeKgH = 1.5;
/** The common worth, -2..1, under which a stop is advised; a late stop costs six times an early one, but both lean early, more so without the smoke. */
var stopBelow = {
	smoke: -.25,
	three: -.4
};
var stopMinutes = 2;
/** Share of the ensemble in the common forecast. */
var ensembleForecastShare = .4;
/** Either alone is honest about its own doubt; the mean of both is surer than either. */
var narrowed = .85;
var hourMs$3 = 36e5;
/** Both on the same readings: the ensemble estimates; stop and forecasts come from the two together. */
function pairOf(first, networks, forecasters) {
	return {
		version: 1e3 * first.version + 4,
		start: (config) => ({
			ensemble: first.start(config),
			judge: startJudge(config.charge),
			worth: config.worth,
			common: null,
			downMinutes: 0,
			stop: false
		}),
		step(state, readings, evidence) {
			state.ensemble = first.step(state.ensemble, readings, evidence);
			stepJudge(state.judge, readings, evidence, networks, state.worth);
			if (state.judge.steps === 0) weigh(state, first.advice(state.ensemble).collectWorthPerH);
			return state;
		},
		estimate: (state) => first.estimate(state.ensemble),
		advice(state) {
			const advice = first.advice(state.ensemble);
			const { shares } = state.judge;
			if (shares === null || state.common === null) return advice;
			const reasons = [...advice.because["stop-collecting"] ?? [], {
				code: "learned-tar",
				value: shares[2]
			}];
			return {
				...advice,
				stopCollecting: state.stop,
				because: {
					...advice.because,
					"stop-collecting": reasons
				}
			};
		},
		forecast(state) {
			const own = first.forecast(state.ensemble);
			const { memory } = state.judge;
			if (memory.litMinute === null || memory.smoothWall.length === 0) return own;
			return {
				...own,
				calls: together(own, horizonOf(forecasters, signsOf(memory)))
			};
		},
		freeze(state) {
			const { ensemble: inner, ...rest } = state;
			const bytes = first.freeze(inner);
			const own = freeze(rest);
			const all = new Uint8Array(4 + own.length + bytes.length);
			new DataView(all.buffer).setUint32(0, own.length);
			all.set(own, 4);
			all.set(bytes, 4 + own.length);
			return all;
		},
		thaw(bytes) {
			const length = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0);
			return {
				...thaw(bytes.subarray(4, 4 + length)),
				ensemble: first.thaw(bytes.subarray(4 + length))
			};
		}
	};
}
/** Once a minute: the common worth, and whether it has been low for long enough. A stop stands until the worth is clearly back. */
function weigh(state, ensembleWorthKgH) {
	const judged = state.judge.worth;
	if (judged === null || ensembleWorthKgH === null) return;
	state.common = ensembleShare * Math.tanh(ensembleWorthKgH / squeezeKgH) + .44999999999999996 * judged;
	state.downMinutes = state.common < stopBelow[smokeIsHeard(state.judge.memory) ? "smoke" : "three"] ? state.downMinutes + 1 : 0;
	state.stop = state.downMinutes >= stopMinutes || state.stop && state.common < 0;
}
var heard = {
	"start-collecting": "start",
	"stop-collecting": "stop",
	seal: "seal"
};
/** The mean of both ranges, where the ensemble has one yet, narrowed about its middle. */
function together({ calls, view }, horizon) {
	const both = {};
	for (const [call, name] of Object.entries(heard)) {
		const learned = rangeAt(view.at, horizon[name]);
		const own = calls[call] ?? learned;
		const mean = (edge) => ensembleForecastShare * own[edge] + .6 * learned[edge];
		const likely = Math.max(view.at, mean("likely"));
		const from = (edge) => Math.max(view.at, likely + narrowed * (mean(edge) - likely));
		both[call] = {
			earliest: from("earliest"),
			likely,
			latest: from("latest")
		};
	}
	return both;
}
var rangeAt = (at, [low, middle, high]) => ({
	earliest: at + low * hourMs$3,
	likely: at + middle * hourMs$3,
	latest: at + high * hourMs$3
});
/** The estimator that the service runs. */
var pair = pairOf(ensemble, judges, horizons);
// ../../work/w/calls/server/domain/firing/facts.ts
function noFacts() {
	return {
		loadedAt: null,
		litAt: null,
		stoppedFeedingAt: null,
		startedAt: null,
		stoppedAt: null,
		refinedAt: null,
		sealedAt: null,
		crackedAt: null,
		openedAt: null,
		unloadedAt: null,
		armedAt: null,
		feeds: [],
		wettings: [],
		smoke: [],
		drip: [],
		mouth: null,
		chimney: null,
		bottleNumber: 1,
		bottleLitres: null,
		lastBottleAt: null,
		lastGlassAt: null,
		charge: {}
	};
}
/** Acts that still count, in the order in which they were done: an act named by a later `corrects` does not. */
function standing(acts) {
	const void_ = /* @__PURE__ */ new Set();
	for (const act of acts) if (act.corrects !== void 0) void_.add(act.corrects);
	return acts.filter((act) => !void_.has(act.id)).sort((a, b) => a.doneAt - b.doneAt);
}
/** Reads the whole log of a firing anew, so that back-dated and corrected entries need no undoing. */
function factsOf(acts) {
	const facts = noFacts();
	for (const act of standing(acts)) note(facts, act);
	return facts;
}
function note(facts, { act, doneAt }) {
	switch (act.action) {
		case "load":
			facts.loadedAt = doneAt;
			facts.charge = {
				...act.massKg === void 0 ? {} : { massKg: act.massKg },
				...act.moisturePct === void 0 ? {} : { moisturePct: act.moisturePct },
				...act.pieceMm === void 0 ? {} : { pieceMm: act.pieceMm }
			};
			break;
		case "light":
			facts.litAt ??= doneAt;
			break;
		case "start-collecting":
			facts.startedAt = doneAt;
			facts.stoppedAt = null;
			break;
		case "stop-collecting":
			facts.stoppedAt = doneAt;
			break;
		case "refuel":
			facts.feeds.push(doneAt);
			break;
		case "wet-condenser":
			facts.wettings.push(doneAt);
			break;
		case "swap-bottle":
			facts.bottleNumber += 1;
			facts.bottleLitres = act.litres ?? null;
			facts.lastBottleAt = doneAt;
			break;
		case "stop-feeding":
			facts.stoppedFeedingAt = doneAt;
			break;
		case "air":
			facts.mouth = act.mouth ?? facts.mouth;
			facts.chimney = act.chimney ?? facts.chimney;
			break;
		case "refine":
			facts.refinedAt = doneAt;
			break;
		case "seal":
			facts.sealedAt ??= doneAt;
			facts.openedAt = null;
			break;
		case "crack":
			facts.crackedAt = doneAt;
			break;
		case "reseal":
			facts.sealedAt = doneAt;
			facts.crackedAt = null;
			facts.openedAt = null;
			break;
		case "open":
			facts.openedAt = doneAt;
			break;
		case "unload":
			facts.unloadedAt = doneAt;
			break;
		case "glass":
			facts.lastGlassAt = doneAt;
			if (act.drip !== void 0) facts.drip.push({
				look: act.drip,
				at: doneAt
			});
			break;
		case "observe":
			if (act.smoke !== void 0) facts.smoke.push({
				look: act.smoke,
				at: doneAt
			});
			if (act.drip !== void 0) facts.drip.push({
				look: act.drip,
				at: doneAt
			});
			break;
		case "arm": facts.armedAt = doneAt;
	}
}
function newest(seen) {
	return seen.at(-1) ?? null;
}
// ../../work/w/calls/server/domain/firing/model.ts
/** The config that the estimator starts with: what was weighed at loading outranks the plan. */
function modelConfig(state) {
	return {
		...state.config,
		charge: {
			...state.config.charge,
			...state.facts.charge
		}
	};
}
/** What an act tells the estimator; null where it tells nothing. */
function evidenceOf({ act, doneAt }) {
	switch (act.action) {
		case "light": return [{
			at: doneAt,
			kind: "lit"
		}];
		case "load": return [{
			at: doneAt,
			kind: "charge",
			charge: chargeOf(act)
		}];
		case "refuel": return [{
			at: doneAt,
			kind: "fed"
		}];
		case "wet-condenser": return [{
			at: doneAt,
			kind: "wetted"
		}];
		case "swap-bottle": return act.litres === void 0 ? [] : [{
			at: doneAt,
			kind: "bottle",
			litres: act.litres
		}];
		case "air": return [{
			at: doneAt,
			kind: "air",
			...act.mouth === void 0 ? {} : { mouth: act.mouth },
			...act.chimney === void 0 ? {} : { chimney: act.chimney }
		}];
		case "stop-feeding": return [{
			at: doneAt,
			kind: "stopped-feeding"
		}];
		case "weather": return [{
			at: doneAt,
			kind: "weather",
			weather: act.weather
		}];
		case "seal":
		case "reseal": return [{
			at: doneAt,
			kind: "sealed"
		}];
		case "crack":
		case "open": return [{
			at: doneAt,
			kind: "opened"
		}];
		case "glass": return act.drip === void 0 ? [] : [{
			at: doneAt,
			kind: "drip",
			look: act.drip
		}];
		case "observe": return [...act.smoke === void 0 ? [] : [{
			at: doneAt,
			kind: "smoke",
			look: act.smoke
		}], ...act.drip === void 0 ? [] : [{
			at: doneAt,
			kind: "drip",
			look: act.drip
		}]];
		default: return [];
	}
}
function chargeOf(act) {
	return {
		...act.massKg === void 0 ? {} : { massKg: act.massKg },
		...act.moisturePct === void 0 ? {} : { moisturePct: act.moisturePct },
		...act.pieceMm === void 0 ? {} : { pieceMm: act.pieceMm }
	};
}
/** One grid step of the estimator; its advice once a minute. */
function stepModel(state, estimator, at) {
	const { now } = state;
	const readings = {
		at,
		fireboxC: now.firebox ?? null,
		wallC: now.wall ?? null,
		outletC: now.outlet ?? null,
		smokeC: now.smoke ?? null,
		ambientC: now.ambient ?? null,
		coreC: now.core ?? null,
		bottleKg: now.bottle ?? null
	};
	state.model = estimator.step(state.model ?? estimator.start(modelConfig(state)), readings, state.evidence);
	state.evidence = [];
	if (at % 6e4 !== 0) return;
	state.estimate = estimator.estimate(state.model);
	state.advice = estimator.advice(state.model);
}
// ../../work/w/calls/server/contract/vocabulary.ts
/** What a channel measures at the kiln. A channel named after a role takes it by itself. */
var roles = [
	"firebox",
	"wall",
	"outlet",
	"smoke",
	"ambient",
	"core",
	"bottle",
	"co"
];
var calls = [
	"stop-feeding",
	"start-collecting",
	"stop-collecting",
	"seal",
	"open"
];
var alarmCodes = [
	"condenser-warm",
	"condenser-hot",
	"fire-dying",
	"fire-out",
	"flame-inside",
	"stop-overdue",
	"seal-overdue",
	"air-leak",
	"reignition",
	"vent-choked",
	"co-high",
	"probe-fault",
	"probe-silent",
	"probe-stuck",
	"probe-swapped",
	"node-lost",
	"clock-suspect",
	"storage-failing",
	"service-failing",
	"nobody-watching"
];
var smokeLooks = [
	"none",
	"white",
	"yellow",
	"blue",
	"clear"
];
var dripLooks = [
	"none",
	"clear",
	"pale",
	"amber",
	"dark",
	"black"
];
var openings = [
	"open",
	"half",
	"hole",
	"closed"
];
var weathers = [
	"rain",
	"wind",
	"dry"
];
/** Words of a probe's fault on the wire (`vs: "fault:open"`). */
var faultWords = [
	"open",
	"short-gnd",
	"short-vcc",
	"range",
	"bus",
	"crc",
	"not-converted",
	"saturated"
];
/** Troubles of the service itself that the kiln fold turns into alarms. */
var healthCodes = [
	"storage-failing",
	"clock-suspect",
	"service-failing",
	"nobody-watching"
];
/** The small fire is kept to the end, or the charge is let run by itself once its smoke is thick and white. */
var firingWays = ["kept", "let-run"];
// ../../work/w/calls/server/domain/alarms/transition.ts
/** The next state, or null where the command is blocked. States and moves: instrument facts 6.2. */
function transition(state, command, nature) {
	const present = nature.on ? "unacknowledged" : "normal";
	switch (command) {
		case "raise": return state === "normal" || state === "returned-unacknowledged" || state === "latched-unacknowledged" || state === "latched-acknowledged" ? "unacknowledged" : null;
		case "clear":
			if (state === "unacknowledged") return nature.latching ? "latched-unacknowledged" : nature.returnsByItself ? "normal" : "returned-unacknowledged";
			if (state === "acknowledged") return nature.latching ? "latched-acknowledged" : "normal";
			return null;
		case "acknowledge":
			if (state === "unacknowledged") return "acknowledged";
			if (state === "returned-unacknowledged") return "normal";
			if (state === "latched-unacknowledged") return "latched-acknowledged";
			return state === "latched-acknowledged" ? "normal" : null;
		case "realarm": return state === "acknowledged" && nature.on ? "unacknowledged" : null;
		case "shelve": return mayBeHidden(state) ? "shelved" : null;
		case "unshelve": return state === "shelved" ? present : null;
		case "suppress": return mayBeHidden(state) ? "suppressed" : null;
		case "release": return state === "suppressed" ? present : null;
		case "remove": return mayBeHidden(state) ? "out-of-service" : null;
		case "restore": return state === "out-of-service" ? present : null;
	}
}
function mayBeHidden(state) {
	return state === "normal" || state === "unacknowledged" || state === "acknowledged" || state === "returned-unacknowledged";
}
// ../../work/w/calls/server/domain/alarms/engine.ts
function newItem(alarm, channel, priority, at) {
	return {
		alarm,
		channel,
		state: "normal",
		since: at,
		priority,
		because: [],
		firstOut: false,
		told: null,
		shelvedUntil: null,
		on: false,
		abnormalSince: null,
		clearSince: null,
		delays: null
	};
}
/** Takes in how the condition stands now. What cannot be judged changes nothing: a bad probe never quiets the alarm that it feeds. */
function judge(item, sign, at) {
	if (sign === "unknown") return;
	if (sign === "abnormal") item.abnormalSince ??= at;
	else item.abnormalSince = null;
	if (sign === "normal") item.clearSince ??= at;
	else item.clearSince = null;
}
var onMs = (item, definition) => (item.delays?.onS ?? definition.onDelayS) * 1e3;
var offMs = (item, definition) => (item.delays?.offS ?? definition.offDelayS) * 1e3;
/** When the item may change by itself; Infinity when never. */
function nextAt(item, definition) {
	let next = Infinity;
	if (!item.on && item.abnormalSince !== null) next = item.abnormalSince + onMs(item, definition);
	else if (item.on && item.clearSince !== null) next = item.clearSince + offMs(item, definition);
	if (item.shelvedUntil !== null) next = Math.min(next, item.shelvedUntil);
	if (item.state === "acknowledged" && item.on && definition.realarmS !== null) next = Math.min(next, item.since + definition.realarmS * 1e3);
	return next;
}
/** Lets the clocks run to `at`. True when the state changed. */
function advance(item, definition, at) {
	let changed = false;
	if (!item.on && item.abnormalSince !== null && at - item.abnormalSince >= onMs(item, definition)) {
		item.on = true;
		changed = command(item, definition, "raise", at);
	} else if (item.on && item.clearSince !== null && at - item.clearSince >= offMs(item, definition)) {
		item.on = false;
		changed = command(item, definition, "clear", at);
	}
	if (item.shelvedUntil !== null && at >= item.shelvedUntil) changed = command(item, definition, "unshelve", at) || changed;
	if (item.state === "acknowledged" && item.on && definition.realarmS !== null && at - item.since >= definition.realarmS * 1e3) changed = command(item, definition, "realarm", at) || changed;
	return changed;
}
/** Carries out one command; false where it is blocked. */
function command(item, definition, what, at) {
	const next = transition(item.state, what, {
		on: item.on,
		latching: definition.latching,
		returnsByItself: definition.returnsByItself
	});
	if (next === null) return false;
	item.state = next;
	item.since = at;
	if (next !== "shelved") item.shelvedUntil = null;
	if (next === "normal") item.firstOut = false;
	return true;
}
// ../../work/w/calls/server/domain/alarms/board.ts
function emptyBoard() {
	return {
		items: {},
		nextAt: -1,
		raisedAt: [],
		flood: false
	};
}
var rank = {
	urgent: 0,
	warning: 1,
	notice: 2
};
var floodMs = 6e5;
var floodStarts = 10;
var floodEnds = 5;
var keyOf = (alarm, channel) => channel === null ? alarm : `${alarm} ${channel}`;
/** Takes in how one condition stands at `at`. Returns the item when its state changed and is worth a word. */
function tell(board, table, at, phase, telling) {
	const { alarm, channel, sign, because } = telling;
	const definition = table[alarm];
	const priority = telling.priority ?? definition.priority;
	const key = keyOf(alarm, channel);
	let item = board.items[key];
	if (item === void 0) {
		if (sign !== "abnormal") return null;
		item = newItem(alarm, channel, priority, at);
		board.items[key] = item;
	}
	if (!item.on) item.delays = telling.delays ?? null;
	if (item.abnormalSince === null && item.clearSince !== null && sign === "normal" && item.state === "normal" && !item.on) return null;
	judge(item, sign, at);
	let grew = false;
	if (sign === "abnormal") {
		item.because = because;
		if (!item.on) item.priority = priority;
		else if (rank[priority] < rank[item.priority]) grew = escalate(board, table, item, priority, at);
	}
	const quiet = telling.quiet === true || definition.quietIn.includes(phase) || board.flood && priority === "notice";
	const spoke = hush(board, table, item, quiet, sign, at);
	const changed = step(board, table, item, at);
	settle(board, table);
	return spoke || changed || grew ? item : null;
}
/** What has become more urgent is told anew, even where it was acknowledged; it never becomes less urgent while it lasts. */
function escalate(board, table, item, priority, at) {
	item.priority = priority;
	if (item.state === "shelved" || item.state === "suppressed" || item.state === "out-of-service") return false;
	item.state = "unacknowledged";
	item.since = at;
	raised(board, table, item, at);
	return true;
}
/** Suppresses by design, or lets out again: then the state is taken anew from the present condition. */
function hush(board, table, item, quiet, sign, at) {
	const definition = table[item.alarm];
	if (quiet && item.state !== "suppressed") {
		const sounded = item.state !== "normal";
		return command(item, definition, "suppress", at) && sounded;
	}
	if (quiet || item.state !== "suppressed") return false;
	if (sign === "normal" || sign === "between") item.on = false;
	command(item, definition, "release", at);
	if (item.on) raised(board, table, item, at);
	return item.on;
}
function step(board, table, item, at) {
	const before = item.state;
	if (!advance(item, table[item.alarm], at)) return false;
	if (item.state === "unacknowledged" && before !== "unacknowledged") raised(board, table, item, at);
	return true;
}
/** Lets all clocks run to `at`; cheap while nothing is due. */
function tickBoard(board, table, at) {
	if (board.nextAt < 0 || at < board.nextAt) return [];
	const changed = [];
	for (const key in board.items) {
		const item = board.items[key];
		if (item !== void 0 && step(board, table, item, at)) changed.push(item);
	}
	settle(board, table);
	return changed;
}
/** What a person does: to one alarm of a channel, or to every alarm of that code where no channel is named. */
function order$1(board, table, at, what, alarm, channel, minutes = 0) {
	const changed = [];
	for (const key in board.items) {
		const item = board.items[key];
		if (item === void 0 || item.alarm !== alarm || channel !== null && item.channel !== channel) continue;
		const definition = table[alarm];
		if (!command(item, definition, what, at)) continue;
		if (what === "shelve") item.shelvedUntil = at + Math.min(Math.max(minutes, 1), definition.longestShelveMin) * 6e4;
		changed.push(item);
	}
	settle(board, table);
	return changed;
}
function raised(board, table, item, at) {
	board.raisedAt = board.raisedAt.filter((t) => t > at - floodMs);
	board.raisedAt.push(at);
	if (board.raisedAt.length >= floodStarts) board.flood = true;
	item.told = at;
	const { group } = table[item.alarm];
	item.firstOut = !Object.values(board.items).some((other) => other !== item && other.on && other.state !== "suppressed" && table[other.alarm].group === group);
}
/** Ends a flood when the rate has fallen. */
function ebb(board, at) {
	if (!board.flood) return;
	board.raisedAt = board.raisedAt.filter((t) => t > at - floodMs);
	if (board.raisedAt.length < floodEnds) board.flood = false;
}
function settle(board, table) {
	let next = Infinity;
	for (const key in board.items) {
		const item = board.items[key];
		if (item !== void 0) next = Math.min(next, nextAt(item, table[item.alarm]));
	}
	board.nextAt = Number.isFinite(next) ? next : -1;
}
/** What a page shows: everything that is not normal, and of the quiet ones those whose condition is on. Urgent first, then oldest. */
function boardView(board) {
	return Object.values(board.items).filter((item) => item.state !== "normal" && (item.state !== "suppressed" || item.on)).sort((a, b) => rank[a.priority] - rank[b.priority] || a.since - b.since).map((item) => ({
		alarm: item.alarm,
		...item.channel === null ? {} : { channel: item.channel },
		state: item.state,
		priority: item.priority,
		since: item.since,
		firstOut: item.firstOut,
		because: item.because,
		shelvedUntil: item.shelvedUntil
	}));
}
// ../../work/w/calls/server/domain/firing/history.ts
var kept = 240;
var minuteMs$7 = 6e4;
function emptyHistory() {
	return {
		minute: 0,
		values: []
	};
}
/** Writes the level of the minute that ends at `at`; minutes that were skipped become gaps. */
function write(history, at, value) {
	const minute = Math.floor(at / minuteMs$7);
	const gap = history.values.length === 0 ? 1 : minute - history.minute;
	if (gap <= 0) return;
	if (gap > kept) history.values = [];
	else for (let i = 1; i < gap; i++) history.values.push(null);
	history.values.push(value === null ? null : Math.round(value * 1e3) / 1e3);
	history.minute = minute;
	if (history.values.length > kept) history.values.splice(0, history.values.length - kept);
}
/** The value below which the share `part` of the last `minutes` lies (nearest rank); null with fewer than a third of them. */
function quantile(history, minutes, part) {
	const values = history.values.slice(-minutes).filter((v) => v !== null);
	if (values.length === 0 || values.length * 3 < Math.min(minutes, history.values.length)) return null;
	values.sort((a, b) => a - b);
	return values[Math.min(values.length - 1, Math.floor(part * values.length))] ?? null;
}
/** Mean of `minutes`, leaving out the last `skip`; null with fewer than a third of them. */
function mean(history, minutes, skip = 0) {
	let sum = 0;
	let n = 0;
	const end = history.values.length - skip;
	for (let i = Math.max(0, end - minutes); i < end; i++) {
		const v = history.values[i];
		if (v === null || v === void 0) continue;
		sum += v;
		n++;
	}
	return n === 0 || n * 3 < Math.min(minutes, end) ? null : sum / n;
}
/** Least-squares slope over `minutes`, per hour, leaving out the last `skip`; null with fewer than half of them (at least 3). */
function slope(history, minutes, skip = 0) {
	let n = 0;
	let sx = 0;
	let sy = 0;
	let sxx = 0;
	let sxy = 0;
	const end = history.values.length - skip;
	const first = Math.max(0, end - minutes);
	for (let i = first; i < end; i++) {
		const y = history.values[i];
		if (y === null || y === void 0) continue;
		const x = i - first;
		n++;
		sx += x;
		sy += y;
		sxx += x * x;
		sxy += x * y;
	}
	const spread = n * sxx - sx * sx;
	if (n < 3 || n * 2 < minutes || spread <= 0) return null;
	return (n * sxy - sx * sy) / spread * 60;
}
/** Neighbouring minutes of a fire tell much the same, so that a line through them is surer of itself than it should be; no source. */
var alikeFactor = 2;
/** Slope over `minutes` with its standard deviation, per hour; null where {@link slope} is. */
function trendOver(history, minutes) {
	const slopePerH = slope(history, minutes);
	if (slopePerH === null) return null;
	const points = history.values.slice(-minutes).flatMap((y, x) => y === null ? [] : [{
		x,
		y
	}]);
	const n = points.length;
	const middleX = points.reduce((sum, { x }) => sum + x, 0) / n;
	const middleY = points.reduce((sum, { y }) => sum + y, 0) / n;
	let squares = 0;
	let spread = 0;
	for (const { x, y } of points) {
		const off = y - middleY - slopePerH / 60 * (x - middleX);
		squares += off * off;
		spread += (x - middleX) * (x - middleX);
	}
	return {
		slopePerH,
		slopeSd: alikeFactor * Math.sqrt(squares / (n - 2) / spread) * 60
	};
}
/** The largest value of the last `minutes`. */
function highest(history, minutes) {
	let top = null;
	for (let i = Math.max(0, history.values.length - minutes); i < history.values.length; i++) {
		const v = history.values[i];
		if (v !== null && v !== void 0 && (top === null || v > top)) top = v;
	}
	return top;
}
function lowest(history, minutes) {
	let bottom = null;
	for (let i = Math.max(0, history.values.length - minutes); i < history.values.length; i++) {
		const v = history.values[i];
		if (v !== null && v !== void 0 && (bottom === null || v < bottom)) bottom = v;
	}
	return bottom;
}
// ../../work/w/calls/server/domain/alarms/limit.ts
function above(value, limit, deadBand) {
	if (value === null || value === void 0) return "unknown";
	if (value >= limit) return "abnormal";
	return value < limit - deadBand ? "normal" : "between";
}
function below(value, limit, deadBand) {
	if (value === null || value === void 0) return "unknown";
	if (value <= limit) return "abnormal";
	return value > limit + deadBand ? "normal" : "between";
}
/** A yes or no without a band; null is a thing that cannot be judged now. */
function when(yes) {
	return yes === null ? "unknown" : yes ? "abnormal" : "normal";
}
// ../../work/w/calls/server/domain/alarms/fire.ts
function startFire() {
	return {
		usualC: null,
		established: false,
		habitMin: null
	};
}
/** A fire that fell to this share of what it usually is, is dying: between feedings it keeps nine tenths. Common practice, no source. */
var dyingShare = .6;
var deadBandK = 15;
function stepFire(fire, look) {
	if (look.litAt === null) {
		fire.established = false;
		return;
	}
	fire.usualC = quantile(look.past.firebox, 180, .75);
	const steady = lowest(look.past.firebox, 5);
	if (steady !== null && steady >= look.config.limits.fireLowC + 30 && look.past.firebox.values.length >= 5) fire.established = true;
	const feeds = look.facts.feeds;
	if (feeds.length < 3) return;
	const gaps = feeds.slice(-8).map((at, i, last) => i === 0 ? 0 : (at - (last[i - 1] ?? at)) / 6e4).slice(1).sort((a, b) => a - b);
	fire.habitMin = gaps[gaps.length >> 1] ?? null;
}
/** Below this the fire is dying: a share of its own usual, within what the kiln's limits allow. */
function dyingC(fire, look) {
	const { fireLowC, fireOutC } = look.config.limits;
	const own = fire.usualC === null ? fireLowC : dyingShare * fire.usualC;
	return Math.min(fireLowC + 50, Math.max(fireOutC + 50, own));
}
/** No word about the fire where the charge runs by itself. */
function fireIsWanted(scene) {
	const { look, calls } = scene;
	if (look.facts.stoppedFeedingAt !== null || look.facts.sealedAt !== null) return false;
	return !(look.config.way === "let-run" && calls["stop-feeding"].state === "due");
}
/** Every good firebox sample. */
function judgeFire(scene, fireboxC, tell) {
	const { fire, look } = scene;
	if (!fire.established) return;
	const quiet = !fireIsWanted(scene);
	const limit = dyingC(fire, look);
	const because = [{
		code: "firebox-under",
		value: fireboxC,
		limit
	}];
	const fed = look.facts.feeds.at(-1);
	if (fed !== void 0) because.push({
		code: "fed-before",
		value: (look.at - fed) / 6e4,
		...fire.habitMin === null ? {} : { limit: fire.habitMin }
	});
	tell({
		alarm: "fire-dying",
		channel: null,
		sign: below(fireboxC, limit, deadBandK),
		because,
		quiet
	});
	const { fireOutC } = look.config.limits;
	tell({
		alarm: "fire-out",
		channel: null,
		sign: below(fireboxC, fireOutC, deadBandK),
		because: [{
			code: "firebox-under",
			value: fireboxC,
			limit: fireOutC
		}],
		quiet
	});
}
/** The wall warms faster than fire gas can warm it through earth and wood: flame has got in. Steepest tight firing 240 K/h, on trials. */
var runawayKPerH = 600;
function judgeWall(scene, tell) {
	const { past } = scene.look;
	const wall = mean(past.wall, 2);
	const rate = slope(past.wall, 5);
	tell({
		alarm: "flame-inside",
		channel: null,
		sign: when(wall === null || rate === null ? null : wall > 120 && rate > runawayKPerH),
		because: [{
			code: "wall-climbs",
			value: rate ?? 0,
			limit: runawayKPerH
		}]
	});
}
/** Smoke collapses towards the air while the fire burns on: nothing comes through the pipe. Needs a smoke probe. */
function judgeVent(scene, tell) {
	const { past } = scene.look;
	const smoke = mean(past.smoke, 5);
	const before = mean(past.smoke, 10, 15);
	const air = mean(past.ambient, 10) ?? 30;
	const fire = mean(past.firebox, 5);
	const fireBefore = mean(past.firebox, 10, 15);
	const judged = smoke !== null && before !== null && fire !== null && fireBefore !== null && before > air + 25;
	const share = judged ? (smoke - air) / (before - air) : 1;
	tell({
		alarm: "vent-choked",
		channel: null,
		sign: when(judged ? share < .5 && fire > .9 * fireBefore : null),
		because: [{
			code: "smoke-collapsed",
			value: smoke ?? 0,
			limit: air + (before ?? 0) / 2
		}]
	});
}
// ../../work/w/calls/server/domain/calls/state.ts
function startCalls(at) {
	const fresh = () => ({
		state: "not-yet",
		since: at,
		because: [],
		forecast: null
	});
	return {
		"stop-feeding": fresh(),
		"start-collecting": fresh(),
		"stop-collecting": fresh(),
		seal: fresh(),
		open: fresh()
	};
}
/** not-yet -> due -> done | withdrawn (-> due). What was done stands; a correction of the log takes it back. */
function stepCalls(states, proposals, done, at) {
	const changes = [];
	for (const call of calls) {
		const state = states[call];
		const doneAt = done[call];
		if (doneAt !== void 0) {
			if (state.state !== "done") changes.push(turn(state, call, "done", [{ code: "logged" }], doneAt));
			continue;
		}
		if (state.state === "done") {
			state.state = "not-yet";
			state.since = at;
			state.because = [];
		}
		const proposal = proposals[call];
		if (proposal === void 0) continue;
		if (state.state !== "due" && proposal.due) changes.push(turn(state, call, "due", proposal.because, at));
		else if (state.state === "due" && proposal.withdraw) changes.push(turn(state, call, "withdrawn", proposal.because, at));
	}
	return changes;
}
function turn(state, call, to, because, since) {
	state.state = to;
	state.since = since;
	state.because = because;
	if (to !== "withdrawn") state.forecast = null;
	return {
		call,
		state: to,
		because
	};
}
// ../../work/w/calls/server/domain/calls/heat.ts
function startHeat$1() {
	return {
		sumKh: 0,
		since100Kh: 0,
		wall100At: null,
		wall160At: null,
		peakLoadK: 0,
		coolestOutletC: null
	};
}
/** A 200-litre drum of air-dry wood: common practice, no source. Assumed where nobody weighed, and said. */
var drumKg = 75;
var drumMoisturePct = 25;
function chargeMass(config, charge) {
	const massKg = charge.massKg ?? config.charge.massKg;
	const moisturePct = charge.moisturePct ?? config.charge.moisturePct ?? drumMoisturePct;
	const wetKg = massKg ?? drumKg * config.volumeL / 200;
	return {
		wetKg,
		dryKg: wetKg * (1 - moisturePct / 100),
		assumed: massKg === void 0
	};
}
/** One minute. A gap of the firebox is bridged with its last ten minutes. */
function stepHeat(heat, look) {
	const firebox = mean(look.past.firebox, 1) ?? mean(look.past.firebox, 10);
	const outlet = mean(look.past.outlet, 1) ?? mean(look.past.outlet, 10) ?? look.now.ambient ?? 30;
	const wall = mean(look.past.wall, 10);
	if (wall !== null && wall >= 100) heat.wall100At ??= look.at;
	if (wall !== null && wall >= 160) heat.wall160At ??= look.at;
	if (firebox !== null) {
		const gained = Math.max(0, firebox - outlet) / 60;
		heat.sumKh += gained;
		if (heat.wall100At !== null) heat.since100Kh += gained;
	}
	const cool = mean(look.past.outlet, 10);
	if (cool !== null && (heat.coolestOutletC === null || cool < heat.coolestOutletC)) heat.coolestOutletC = cool;
	const load = condenserLoadK(heat, look);
	if (load !== null) heat.peakLoadK = Math.max(heat.peakLoadK, load);
}
/** Outlet over the air, mean of 40 minutes so that wet and dry cloths even out, K. */
function condenserLoadK(heat, look) {
	const outlet = mean(look.past.outlet, 40);
	const air = mean(look.past.ambient, 40) ?? heat.coolestOutletC;
	return outlet === null || air === null ? null : outlet - air;
}
/** The fire burns and was not falling away: without it no heat of the past counts as a firing that caught. */
function fireHolds(look) {
	const firebox = mean(look.past.firebox, 20);
	const earlier = highest(look.past.firebox, 60);
	if (firebox === null) return true;
	return firebox >= look.config.limits.fireLowC && (earlier === null || firebox > earlier - 200);
}
// ../../work/w/calls/server/domain/phases/limits.ts
/** Smoke at the chimney's mouth, °C: where a phase begins. */
var smokeBands = {
	drying: 45,
	breakdown: 75,
	vinegar: 80,
	plateauTop: 87,
	tar: 150,
	clearing: 260,
	deadBandK: 4
};
/** Drum wall, °C, used only where no smoke probe is heard. It leads the smoke, and its place shifts it by 200 K (trade facts 1.3). */
var wallBands = {
	drying: 45,
	breakdown: 100,
	vinegar: 120,
	tar: 250,
	clearing: 300,
	deadBandK: 8
};
// ../../work/w/calls/server/domain/calls/smoke.ts
/** Left its plateau: it climbs at the rate of a clay kiln at least (trade facts 9.3: 6 K/h), or stands above any plateau. */
var climbingKPerH = 4;
/** A kiln's own plateau is the dew point of its smoke: 64 to 92 by how much gas dilutes the vapour (trade facts 8.15). */
var ownPlateauC = 62;
var aboveOwnPlateauK = 5;
var standingKPerH = 12;
/** The smoke says that collecting is worth it: the published band, or clear of this kiln's own plateau. */
function smokeStart(look) {
	const smoke = mean(look.past.smoke, 10);
	if (smoke === null) return null;
	const limit = look.config.limits.smokeStartC;
	const hour = slope(look.past.smoke, 60) ?? slope(look.past.smoke, 30);
	const quarter = slope(look.past.smoke, 15);
	const rate = hour === null || quarter === null ? hour : Math.min(hour, quarter);
	if (smoke >= limit && (smoke >= smokeBands.plateauTop + 1 || rate !== null && rate >= climbingKPerH)) return [{
		code: "smoke-over",
		value: smoke,
		limit
	}, ...rate === null ? [] : [{
		code: "smoke-climbs",
		value: rate,
		limit: climbingKPerH
	}]];
	const stood = mean(look.past.smoke, 40, 20);
	const stoodRate = slope(look.past.smoke, 40, 20);
	if (stood === null || stoodRate === null || Math.abs(stoodRate) > standingKPerH) return null;
	if (smoke >= ownPlateauC && smoke >= stood + aboveOwnPlateauK) return [{
		code: "smoke-left-plateau",
		value: smoke,
		limit: stood + aboveOwnPlateauK
	}];
	return null;
}
/** The smoke is at its stop, or at the rate of the last half hour will be before the next bottle is full. */
function smokeStop(look) {
	const smoke = mean(look.past.smoke, 10);
	if (smoke === null) return null;
	const limit = look.config.limits.smokeStopC;
	if (smoke >= limit) return [{
		code: "smoke-over",
		value: smoke,
		limit
	}];
	const rate = slope(look.past.smoke, 30);
	if (rate === null || smoke < limit - 40) return null;
	const ahead = smoke + rate * 30 / 60;
	return ahead >= limit ? [{
		code: "smoke-will-reach",
		value: ahead,
		limit
	}, {
		code: "smoke-now",
		value: smoke
	}] : null;
}
var startWarmC = 52;
/** The signs that acids come: a fire that held for its heat, and something warm at wall or outlet. */
function startSigns(look, heat) {
	const { wetKg, assumed } = chargeMass(look.config, look.facts.charge);
	const dose = heat.sumKh / wetKg;
	const warm = Math.max(mean(look.past.wall, 10) ?? 0, mean(look.past.smoke, 10) ?? mean(look.past.outlet, 10) ?? 0);
	if (dose < 10 || warm < startWarmC || !fireHolds(look)) return null;
	const because = [{
		code: "heat-in",
		value: dose,
		limit: 10
	}, {
		code: "vapour-flows",
		value: warm,
		limit: startWarmC
	}];
	if (assumed) because.push({
		code: "charge-assumed",
		value: wetKg
	});
	return because;
}
/** Signs that tar has the upper hand; three of five carry it (two where fewer than four can be asked). */
function stopVotes(look, heat) {
	const { wetKg, dryKg } = chargeMass(look.config, look.facts.charge);
	const lit = look.litAt ?? look.at;
	const votes = {
		yes: [],
		asked: 0
	};
	ask(votes, "wall-over", mean(look.past.wall, 10), 230);
	if (heat.wall160At !== null) ask(votes, "time-since-wall-160", (look.at - lit) / Math.max(1, heat.wall160At - lit), 1.4);
	else votes.asked++;
	if (look.facts.stoppedFeedingAt === null) {
		ask(votes, "heat-since-wall-100", heat.since100Kh / dryKg, 22);
		ask(votes, "heat-in", heat.sumKh / wetKg, 35);
	}
	const load = condenserLoadK(heat, look);
	if (load !== null && heat.peakLoadK > 10 && heat.sumKh / wetKg > 15) askBelow(votes, "condenser-load", load / heat.peakLoadK, .8);
	return votes;
}
/** Signs that charring is done. */
function charredVotes(look, heat, sinceStopShare) {
	const { wetKg, dryKg } = chargeMass(look.config, look.facts.charge);
	const votes = {
		yes: [],
		asked: 0
	};
	if (sinceStopShare !== null) ask(votes, "time-since-stop", sinceStopShare, 1.45);
	if (look.facts.stoppedFeedingAt === null) {
		ask(votes, "heat-since-wall-100", heat.since100Kh / dryKg, 52);
		ask(votes, "heat-in", heat.sumKh / wetKg, 58);
	}
	const rate = slope(look.past.wall, 60);
	if (rate !== null && (mean(look.past.wall, 10) ?? 0) > 200) askBelow(votes, "wall-climbs", rate, 18);
	return votes;
}
function carried(votes) {
	return votes.yes.length >= (votes.asked >= 4 ? 3 : 2);
}
function ask(votes, code, value, limit) {
	if (value === null) return;
	votes.asked++;
	if (value >= limit) votes.yes.push({
		code,
		value,
		limit
	});
}
function askBelow(votes, code, value, limit) {
	votes.asked++;
	if (value < limit) votes.yes.push({
		code: `${code}-under`,
		value,
		limit
	});
}
// ../../work/w/calls/server/domain/calls/window.ts
function startWindow() {
	return {
		heat: startHeat$1(),
		turning: null,
		open: false,
		openBecause: [],
		openAt: null,
		shut: false,
		shutBecause: [],
		shutAt: null,
		charred: null,
		openSince: null,
		shutSince: null
	};
}
var minuteMs$6 = 6e4;
var openDwellMs = 5 * minuteMs$6;
/** A smoke at its limit may only be arriving at a plateau: longer. */
var bandDwellMs = 10 * minuteMs$6;
var shutDwellMs = 8 * minuteMs$6;
/** How long a drip seen clear holds the start back: the next glass is due by then. Common practice, no source. */
var clearHoldsMs = 25 * minuteMs$6;
/** The coolest smoke at which a village kiln's plateau stood was 55 °C (trade facts 1.2.4); the probes may read a little less. */
var sourFromC = 45;
var paleHoldsMs = 25 * minuteMs$6;
/** One minute of the window. `advice` leads where there is no good smoke probe. */
function stepWindow(w, look, advice) {
	stepHeat(w.heat, look);
	const model = advice !== null && advice.collectWorthPerH !== null ? advice : null;
	w.turning = smokeStart(look) ?? startSigns(look, w.heat);
	takeBack(w, look);
	if (!w.open) open$1(w, look, model);
	else if (!w.shut) shut(w, look, model);
	else if (w.shutAt !== null && look.litAt !== null) {
		const share = (look.at - look.litAt) / Math.max(1, w.shutAt - look.litAt);
		const votes = charredVotes(look, w.heat, share);
		w.charred = carried(votes) ? votes.yes : null;
	}
}
/**
* What is seen later than a call and speaks against it: clear water before the bottle stood, a pale drip after the stop. Once acids were
* seen a clear glass is a lull (in simulated firings four of ten were pale again within the half hour) and a little water costs little.
*/
function takeBack(w, look) {
	const drip = newest(look.facts.drip);
	if (drip === null) return;
	const water = drip.look === "clear" && !sourWasSeen(look);
	if (w.open && !w.shut && look.facts.startedAt === null && water && w.openAt !== null && drip.at > w.openAt) {
		w.open = false;
		w.openSince = null;
	}
	const smoke = mean(look.past.smoke, 10);
	const sure = smoke !== null && smoke >= look.config.limits.smokeStopC;
	if (w.shut && look.facts.stoppedAt === null && drip.look === "pale" && w.shutAt !== null && drip.at > w.shutAt && !sure) {
		w.shut = false;
		w.shutSince = null;
	}
}
function open$1(w, look, model) {
	if (look.facts.startedAt !== null) {
		w.open = true;
		w.openAt = look.facts.startedAt;
		w.openBecause = [{ code: "logged" }];
		return;
	}
	const seen = sightedStart(look);
	const because = seen ?? judgedStart(w, look, model);
	const held = heldBy(look, ["clear"], clearHoldsMs) && !sourWasSeen(look);
	w.openSince = because === null || held ? null : w.openSince ?? look.at;
	if (because === null || held || w.openSince === null) return;
	const dwellMs = because[0]?.code === "smoke-over" ? bandDwellMs : openDwellMs;
	if (seen === null && look.at - w.openSince < dwellMs) return;
	w.open = true;
	w.openAt = look.at;
	w.openBecause = because;
}
/** Where the smoke is measured, it or the model starts: in rain and with a strong draught the smoke is late. Else the model, else the signs. */
function judgedStart(w, look, model) {
	return (mean(look.past.smoke, 10) !== null || model === null ? w.turning : null) ?? (model !== null && model.startCollecting ? model.because["start-collecting"] ?? [] : null);
}
function sourWasSeen(look) {
	return look.facts.drip.some(({ look: seen }) => seen === "pale" || seen === "amber" || seen === "dark" || seen === "black");
}
function shut(w, look, model) {
	const seen = sightedStop(look);
	const because = seen ?? (model === null ? rulesStop(w, look) : judgedStop(look, model));
	w.shutSince = because === null ? null : w.shutSince ?? look.at;
	if (because === null || w.shutSince === null) return;
	if (seen === null && look.at - w.shutSince < shutDwellMs) return;
	w.shut = true;
	w.shutAt = look.at;
	w.shutBecause = because;
}
/** The model's stop, with or without a smoke probe; the published band is the outer bound of both. An eye on the drip holds the model back. */
function judgedStop(look, model) {
	const smoke = mean(look.past.smoke, 10);
	const limit = look.config.limits.smokeStopC;
	if (smoke !== null && smoke >= limit) return [{
		code: "smoke-over",
		value: smoke,
		limit
	}];
	if (heldBy(look, ["pale"], paleHoldsMs) || !model.stopCollecting) return null;
	return model.because["stop-collecting"] ?? [{
		code: "worth-now",
		value: model.collectWorthPerH ?? 0
	}];
}
/** The smoke where it is measured, else the votes; a drip seen pale holds both back for a while. */
function rulesStop(w, look) {
	const smoke = mean(look.past.smoke, 10);
	if (smoke !== null) {
		const due = smokeStop(look);
		return smoke < look.config.limits.smokeStopC && heldBy(look, ["pale"], paleHoldsMs) ? null : due;
	}
	if (heldBy(look, ["pale"], paleHoldsMs)) return null;
	const votes = stopVotes(look, w.heat);
	return carried(votes) ? votes.yes : null;
}
/** A pale drip or yellow smoke starts at once, unless the fire is going out or nothing is warm yet: one glass can deceive. */
function sightedStart(look) {
	const warmest = Math.max(...[
		look.past.wall,
		look.past.outlet,
		look.past.smoke
	].map((past) => mean(past, 10) ?? 0));
	if (!fireHolds(look) || warmest < sourFromC) return null;
	const drip = newest(look.facts.drip)?.look;
	const smoke = newest(look.facts.smoke)?.look;
	if (drip === "pale" || drip === "amber") return [{ code: `seen-drip-${drip}` }];
	return smoke === "yellow" && drip !== "clear" && drip !== "none" ? [{ code: "seen-smoke-yellow" }] : null;
}
function sightedStop(look) {
	const drip = newest(look.facts.drip);
	return drip !== null && (drip.look === "dark" || drip.look === "black") ? [{ code: `seen-drip-${drip.look}` }] : null;
}
function heldBy(look, looks, forMs) {
	const drip = newest(look.facts.drip);
	return drip !== null && looks.includes(drip.look) && look.at - drip.at < forMs;
}
// ../../work/w/calls/server/domain/condenser/watch.ts
function startCondenser() {
	return {
		vapourSince: null,
		wetC: null,
		topK: 0,
		tops: [],
		dryMin: 0,
		passing: false,
		waveMin: 0,
		wettedAt: null,
		pausesMin: [],
		checkedWettingAt: null,
		before: null,
		helped: null
	};
}
var minuteMs$5 = 6e4;
/** An outlet this warm carries vapour; below it the drum only breathes. Common practice, no source. */
var vapourC = 38;
/** Cloths dry in a quarter to three quarters of an hour; the coolest of that time is what wet ones reach. Common practice, no source. */
var cycleMin = 40;
/** The load is not settled before: the outlet warms with the kiln. */
var settledMs = 50 * minuteMs$5;
var cycleTopK = 9;
/**
* Cold water on the cloths makes the outlet fall by so much of what it stood over wet ones, and by so many K, within three minutes. From
* trials, no source.
*/
var wettingFall = {
	share: .4,
	leastK: 8
};
var fewestPauses = 3;
/** Cloths count as dry so far over what wet ones reach, K. From trials, no source. */
var dryByK = 14;
var dryBandK = 4;
/** One pause is half as long again as the usual one now and then, twice as long hardly ever: the alarm comes between. From trials, no source. */
var pauseTimes = 1.75;
var pauseLimits = {
	least: 17,
	most: 27,
	unknown: 23
};
var habitTimes = 1.3;
/** And the outlet has stood over the limit for so long, min; where no wetting was ever seen that alone must do. From trials, no source. */
var leastDryMin = 5;
var unseenDryMin = 15;
/**
* Dried cloths let the outlet climb and level off, with the smoke as it was. A wave of smoke lifts both, faster and faster, and is gone in
* minutes: its outlet gains more in two minutes than in the two before, or the smoke gained over eight. From trials, no source.
*/
var waveGainK = 8;
var waveSmokeK = 35;
var waveSmokeMin = 8;
/** What calls itself a wave for longer is none. */
var longestWaveMin = 12;
/** And an outlet that has come down so far from its top of the last four minutes is being seen to, K. From trials, no source. */
var comesDownK = 5;
/** Over this the cloths count as dry, °C; null while the load is unknown. */
function dryLimitC(watch, look) {
	return watch.wetC === null ? null : Math.max(look.config.limits.condenserNoticeC, watch.wetC + dryByK);
}
function followSpell(watch, look) {
	const limit = dryLimitC(watch, look);
	const now = mean(look.past.outlet, 2);
	if (limit === null || now === null) return;
	watch.dryMin = now >= limit || watch.dryMin > 0 && now >= limit - dryBandK ? watch.dryMin + 1 : 0;
}
function followWaves(watch, { past }) {
	const [now, before, first] = [
		mean(past.outlet, 1),
		mean(past.outlet, 1, 2),
		mean(past.outlet, 1, 4)
	];
	const top = highest(past.outlet, 4);
	const smoke = mean(past.smoke, 2);
	const smokeBefore = mean(past.smoke, 2, waveSmokeMin);
	const comesDown = now !== null && top !== null && now <= top - comesDownK;
	const wave = now !== null && before !== null && first !== null && now - before >= before - first + waveGainK || smoke !== null && smokeBefore !== null && smoke - smokeBefore >= waveSmokeK;
	if (watch.dryMin === 0) watch.waveMin = 0;
	else if (wave) watch.waveMin++;
	watch.passing = comesDown || wave && watch.waveMin <= longestWaveMin;
}
function followWettings(watch, look) {
	const before = mean(look.past.outlet, 1, 3);
	const now = mean(look.past.outlet, 1);
	const fall = before === null || now === null ? 0 : before - now;
	const needed = Math.max(wettingFall.leastK, wettingFall.share * ((before ?? 0) - (watch.wetC ?? vapourC)));
	const logged = look.facts.wettings.at(-1) ?? null;
	const at = fall >= needed ? look.at - 2 * minuteMs$5 : logged;
	if (at === null || watch.wettedAt !== null && at < watch.wettedAt + 3 * minuteMs$5) return;
	if (watch.wettedAt !== null) watch.pausesMin = [...watch.pausesMin, (at - watch.wettedAt) / minuteMs$5].slice(-6);
	watch.wettedAt = at;
}
/** What the pause between two wettings usually is here, min; null before the fourth wetting. */
function usualPauseMin({ pausesMin }) {
	if (pausesMin.length < fewestPauses) return null;
	return [...pausesMin].sort((a, b) => a - b)[pausesMin.length >> 1] ?? null;
}
/** Cloths are dry, and nobody wets them as usual. */
function isForgotten(watch, look) {
	if (watch.wettedAt === null) return watch.dryMin >= unseenDryMin;
	const usual = usualPauseMin(watch);
	const limit = usual === null ? pauseLimits.unknown : Math.min(pauseLimits.most, Math.max(pauseLimits.least, pauseTimes * usual));
	return watch.dryMin >= leastDryMin && look.at - watch.wettedAt >= limit * minuteMs$5;
}
/** The next wetting is about to come by this operator's habit. */
function isWithinHabit(watch, look) {
	const usual = usualPauseMin(watch);
	return usual !== null && watch.wettedAt !== null && look.at - watch.wettedAt < Math.min(pauseLimits.least, habitTimes * usual) * minuteMs$5;
}
/** Once a minute. */
function stepCondenser(watch, look) {
	const now = mean(look.past.outlet, 3);
	if (now === null) return;
	const fire = mean(look.past.firebox, 5);
	const usual = quantile(look.past.firebox, 180, .75);
	if (fire !== null && usual !== null && fire < .65 * usual && now < look.config.limits.condenserNoticeC && look.facts.stoppedFeedingAt === null) watch.vapourSince = null;
	else if (now >= vapourC) watch.vapourSince ??= look.at;
	watch.wetC = watch.vapourSince !== null && look.at - watch.vapourSince >= settledMs ? lowest(look.past.outlet, cycleMin) : null;
	followCycle(watch, mean(look.past.outlet, 1) ?? now);
	followSpell(watch, look);
	followWaves(watch, look);
	followWettings(watch, look);
	const wetted = look.facts.wettings.at(-1);
	if (wetted === void 0) return;
	if (wetted !== watch.checkedWettingAt) {
		watch.checkedWettingAt = wetted;
		watch.before = now;
		watch.helped = null;
	} else if (watch.helped === null && watch.before !== null && look.at - wetted >= 7 * minuteMs$5) watch.helped = !(watch.wetC !== null && watch.before > watch.wetC + 5) || now <= watch.before - 3;
}
function followCycle(watch, outletC) {
	const over = watch.wetC === null ? 0 : outletC - watch.wetC;
	watch.topK = Math.max(watch.topK, over);
	if (over > watch.topK / 2 || watch.topK < cycleTopK) return;
	watch.tops = [...watch.tops.slice(-3), watch.topK];
	watch.topK = over;
}
/** Tops scatter: one that was let happen once may come again. From trials, no source. */
var topShare = .85;
/** What the top of a cycle usually is here, K; null before two of them. */
function usualTopK(watch) {
	if (watch.tops.length < 2) return null;
	const sorted = [...watch.tops].sort((a, b) => a - b);
	return Math.max(sorted[sorted.length >> 1] ?? 0, topShare * (sorted.at(-1) ?? 0));
}
/** Minutes until the outlet stands `overK` above what wet cloths reach; null while it does not climb. */
function minutesUntilDry(watch, look, overK) {
	const now = mean(look.past.outlet, 2);
	const rate = slope(look.past.outlet, 6);
	if (now === null || watch.wetC === null || rate === null || rate < 12 || now < watch.wetC + 2) return null;
	const minutes = (watch.wetC + overK - now) / rate * 60;
	return minutes < 0 ? 0 : minutes;
}
// ../../work/w/calls/server/domain/phases/phase.ts
function startPhase(at) {
	return {
		phase: "idle",
		since: at,
		because: [],
		held: {},
		fallingSince: null,
		litInferredAt: null,
		beforeSeal: null
	};
}
var order = [
	"kindling",
	"drying",
	"breakdown",
	"vinegar",
	"tar",
	"clearing"
];
var minuteMs$4 = 6e4;
/** Firebox this hot with nobody having logged a lighting means that somebody lit it: common practice, no source. */
var inferredFireC = 250;
var smokeOf = (look) => mean(look.past.smoke, 10);
var wallOf = (look) => mean(look.past.wall, 10);
function over(code, value, limit) {
	return value !== null && value >= limit ? [{
		code,
		value,
		limit
	}] : null;
}
var steps = [
	{
		phase: "drying",
		dwellMin: 3,
		met: (look) => {
			const smoke = smokeOf(look);
			if (smoke !== null) return over("smoke-over", smoke, smokeBands.drying);
			return over("wall-over", wallOf(look), wallBands.drying) ?? over("outlet-over", mean(look.past.outlet, 10), smokeBands.drying);
		},
		gone: () => false
	},
	{
		phase: "breakdown",
		dwellMin: 10,
		met: (look, window) => {
			const smoke = smokeOf(look);
			const seen = newest(look.facts.smoke);
			if (seen?.look === "yellow" || seen?.look === "blue") return [{ code: `seen-smoke-${seen.look}` }];
			if (window.turning !== null) return window.turning;
			if (smoke === null) return over("wall-over", wallOf(look), wallBands.breakdown);
			if (smoke > smokeBands.plateauTop) return over("smoke-over", smoke, smokeBands.plateauTop);
			const rate = slope(look.past.smoke, 60) ?? slope(look.past.smoke, 20);
			return smoke >= smokeBands.breakdown && rate !== null && rate >= 4 ? [{
				code: "smoke-over",
				value: smoke,
				limit: smokeBands.breakdown
			}, {
				code: "smoke-climbs",
				value: rate,
				limit: 4
			}] : null;
		},
		gone: (look) => {
			const smoke = smokeOf(look);
			if (smoke !== null) return smoke < smokeBands.drying + 10;
			const wall = wallOf(look);
			return wall !== null && wall < wallBands.breakdown - 30;
		}
	},
	{
		phase: "vinegar",
		dwellMin: 0,
		met: (_look, window) => window.open ? window.openBecause : null,
		gone: () => false
	},
	{
		phase: "tar",
		dwellMin: 0,
		met: (_look, window) => window.shut ? window.shutBecause : null,
		gone: () => false
	},
	{
		phase: "clearing",
		dwellMin: 10,
		met: (look, window) => {
			if (!window.shut) return null;
			const smoke = smokeOf(look);
			if (newest(look.facts.smoke)?.look === "clear") return [{ code: "seen-smoke-clear" }];
			if (smoke !== null) return over("smoke-over", smoke, smokeBands.clearing);
			return window.charred;
		},
		gone: () => false
	}
];
/** Dwell in ms: a slow clay kiln waits longer than a drum, in the proportion of their warming (trade facts 9.3). */
function dwellMs(look, minutes) {
	const rate = slope(look.past.smoke, 60) ?? slope(look.past.wall, 60);
	return minutes * (rate === null ? 1 : Math.min(6, Math.max(1, 40 / Math.max(1, Math.abs(rate))))) * minuteMs$4;
}
/** One grid step. `cold` carries the reasons while the open call stands. Returns true when the phase changed. */
function stepPhase(state, look, window, cold) {
	const { facts, at } = look;
	if (facts.unloadedAt !== null) return move(state, at, "idle", [{ code: "unloaded" }]);
	if (facts.sealedAt !== null) return sealed(state, look, cold);
	if (state.beforeSeal !== null) {
		const back = state.beforeSeal;
		state.beforeSeal = null;
		return move(state, at, back, [{ code: "seal-corrected" }]);
	}
	if (state.phase === "idle") return ignite(state, look);
	if (state.phase === "failed") return relight(state, look);
	if (fails(state, look)) return move(state, at, "failed", [{
		code: "fire-out",
		value: look.now.firebox ?? 0,
		limit: look.config.limits.fireOutC
	}]);
	return forward(state, look, window) || back(state, look);
}
function move(state, at, phase, because) {
	if (state.phase === phase) return false;
	state.phase = phase;
	state.since = at;
	state.because = because;
	state.held = {};
	state.fallingSince = null;
	return true;
}
function ignite(state, look) {
	if (look.facts.litAt !== null && look.facts.litAt <= look.at) return move(state, look.at, "kindling", [{ code: "logged-light" }]);
	const firebox = look.now.firebox;
	if (!(firebox !== void 0 && firebox >= inferredFireC)) {
		delete state.held.kindling;
		return false;
	}
	state.held.kindling ??= look.at;
	if (look.at - state.held.kindling < 3 * minuteMs$4) return false;
	state.litInferredAt = state.held.kindling;
	return move(state, look.at, "kindling", [{
		code: "firebox-over",
		value: firebox,
		limit: inferredFireC,
		forS: 180
	}]);
}
/** Cold is what the safety call says; a rise makes it cooling again. */
function sealed(state, look, cold) {
	if (state.phase !== "cooling" && state.phase !== "cold") {
		state.beforeSeal = state.phase;
		return move(state, look.at, "cooling", [{ code: "logged-seal" }]);
	}
	return cold === null ? move(state, look.at, "cooling", [{ code: "not-cold" }]) : move(state, look.at, "cold", cold);
}
function relight(state, look) {
	const firebox = look.now.firebox;
	if (firebox === void 0 || firebox < look.config.limits.fireLowC) {
		delete state.held.kindling;
		return false;
	}
	state.held.kindling ??= look.at;
	if (look.at - state.held.kindling < 2 * minuteMs$4) return false;
	return move(state, look.at, "kindling", [{
		code: "firebox-over",
		value: firebox,
		limit: look.config.limits.fireLowC,
		forS: 120
	}]);
}
var outForMin = 30;
var cooledForMin = 60;
/**
* Early: the fire is out and the wood no longer warms. Later the charge may run by itself, so the wall must fall as well for an hour,
* and hardly any vapour come.
*/
function fails(state, look) {
	const { past } = look;
	const top = highest(past.firebox, outForMin);
	if (!(top !== null && top < look.config.limits.fireOutC && past.firebox.values.length >= outForMin) || look.litAt === null || look.at - look.litAt < 40 * minuteMs$4 || look.at - state.since < 20 * minuteMs$4) return false;
	if (state.phase === "kindling" || state.phase === "drying") {
		const wall = slope(past.wall, 30);
		return wall === null || wall < 4;
	}
	if (state.phase !== "breakdown" && state.phase !== "vinegar") return false;
	const wall = slope(past.wall, cooledForMin);
	const vapour = mean(past.smoke, 10) ?? mean(past.outlet, 10);
	return wall !== null && wall < -6 && vapour !== null && vapour < smokeBands.drying;
}
function forward(state, look, window) {
	const current = order.indexOf(state.phase);
	let target = null;
	for (const step of steps) {
		if (order.indexOf(step.phase) <= current) continue;
		const because = step.met(look, window);
		if (because === null) {
			delete state.held[step.phase];
			continue;
		}
		const since = state.held[step.phase] ??= look.at;
		if (look.at - since >= (step.dwellMin === 0 ? 0 : dwellMs(look, step.dwellMin))) target = {
			phase: step.phase,
			because: lasting(because, look.at - since)
		};
	}
	return target !== null && move(state, look.at, target.phase, target.because);
}
var lasting = (because, ms) => ms === 0 ? because : because.map((r) => ({
	...r,
	forS: Math.round(ms / 1e3)
}));
/** Back from breakdown to drying when the fire failed and its signs are gone for a good while. */
function back(state, look) {
	const step = steps.find((s) => s.phase === state.phase);
	if (state.phase !== "breakdown" || step === void 0 || !step.gone(look)) {
		state.fallingSince = null;
		return false;
	}
	state.fallingSince ??= look.at;
	if (look.at - state.fallingSince < dwellMs(look, 20)) return false;
	return move(state, look.at, "drying", [{
		code: "signs-gone",
		forS: Math.round((look.at - state.fallingSince) / 1e3)
	}]);
}
// ../../work/w/calls/server/domain/firing/state.ts
/** What belongs to one firing, as it stands at its beginning. */
function freshFiring(at) {
	return {
		phase: startPhase(at),
		ribbon: [],
		window: startWindow(),
		calls: startCalls(at),
		cooling: null,
		open: null,
		openNotBefore: null,
		condenser: startCondenser(),
		fire: startFire(),
		hints: [],
		said: {},
		evidence: [],
		advice: null,
		estimate: null,
		forecast: null,
		forecastAt: null
	};
}
function emptyPast() {
	const past = {};
	for (const role of roles) past[role] = emptyHistory();
	return past;
}
function startState(config) {
	return {
		config,
		cause: 0,
		n: 0,
		at: 0,
		nextGridAt: 0,
		channels: {},
		lostNodes: {},
		health: {},
		firing: null,
		acts: [],
		ids: {},
		facts: noFacts(),
		now: {},
		past: emptyPast(),
		cold: { wallOverAirK: null },
		board: emptyBoard(),
		model: null,
		...freshFiring(0)
	};
}
function litAtOf(state) {
	return state.facts.litAt ?? state.phase.litInferredAt;
}
/** Somebody tends the kiln: from loading or lighting until it is unloaded. */
function isTended(state) {
	const { facts } = state;
	if (facts.unloadedAt !== null) return false;
	return facts.loadedAt !== null || litAtOf(state) !== null;
}
function lookAt(state, at) {
	return {
		at,
		now: state.now,
		past: state.past,
		facts: state.facts,
		config: state.config,
		litAt: litAtOf(state)
	};
}
// ../../work/w/calls/server/domain/firing/acts.ts
/** Enters one act in the log; false when its id was known already. */
function takeAct(state, input) {
	if (state.ids[input.id] !== void 0) return false;
	const begins = input.act.action === "load" || input.act.action === "light" ? input.act.action : null;
	if (begins !== null && input.corrects === void 0 && isOver$1(state, begins)) beginFiring(state, input.doneAt);
	state.ids[input.id] = true;
	const { id, at, doneAt, act, corrects } = input;
	const entry = {
		id,
		at,
		doneAt,
		act,
		...corrects === void 0 ? {} : { corrects }
	};
	state.acts.push(entry);
	if (state.firing === null && (begins !== null || act.action === "seal")) state.firing = firingId(state, doneAt);
	state.facts = factsOf(state.acts);
	state.evidence.push(...evidenceOf(entry));
	return true;
}
function firingId(state, at) {
	return `${state.config.kiln}-${Math.floor(at / 1e3)}`;
}
/** A firing is over once its kiln was opened or unloaded, logged or not: nobody loads or lights a sealed one. One that failed may be lit again. */
function isOver$1(state, begins) {
	const { facts } = state;
	if (facts.unloadedAt !== null || facts.openedAt !== null || facts.sealedAt !== null) return true;
	return state.phase.phase === "failed" && begins === "load";
}
function beginFiring(state, at) {
	const before = {};
	for (const act of state.acts) before[act.id] = true;
	state.ids = before;
	state.acts = [];
	state.firing = firingId(state, at);
	state.model = null;
	Object.assign(state, freshFiring(at));
}
// ../../work/w/calls/server/domain/condenser/loss.ts
var n = [
	1167.0521452767,
	-724213.16703206,
	-17.073846940092,
	12020.82470247,
	-3232555.0322333,
	14.91510861353,
	-4823.2657361591,
	405113.40542057,
	-.23855557567849,
	650.17534844798
];
/** Saturation pressure of water, kPa, from 0 to 374 °C: IAPWS-IF97 equation 30 (instrument facts 8.1). */
function saturationKPa(celsius) {
	const t = celsius + 273.15;
	const theta = t + n[8] / (t - n[9]);
	const a = theta * theta + n[0] * theta + n[1];
	const b = n[2] * theta * theta + n[3] * theta + n[4];
	const c = n[5] * theta * theta + n[6] * theta + n[7];
	const root = 2 * c / (-b + Math.sqrt(b * b - 4 * a * c));
	return root * root * root * root * 1e3;
}
/** Dry air pressure by altitude, kPa (international standard atmosphere below 11 km). */
function pressureKPa(altitudeM) {
	return 101.325 * Math.exp(5.2559 * Math.log(1 - altitudeM / 44330));
}
/** Water left in saturated gas, kg per kg of dry gas of molar mass 30 (trade facts 8, table). Infinity at the boil. */
function waterLeft(outletC, totalKPa) {
	const vapour = saturationKPa(outletC);
	return vapour >= totalKPa ? Infinity : 18.015 / 30 * (vapour / (totalKPa - vapour));
}
/** Vapour of a kilogram of dry wood, kg (trade facts 8, table). */
var vapourPerWood = .45;
/** Dry gas per kg of dry wood: from a tight retort to one with much leaked air (trade facts 8, table). */
var dryGas = {
	least: .25,
	most: 1
};
/** Share of the vapour that escapes at this outlet temperature; a range, for nobody knows how much gas dilutes it. */
function lostShare(outletC, totalKPa = 101.325) {
	const left = waterLeft(outletC, totalKPa);
	const share = (gas) => Math.min(1, gas * left / vapourPerWood);
	return {
		low: share(dryGas.least),
		high: share(dryGas.most)
	};
}
/** What dry cloths cost beyond what wet ones lose as well, as a range of the share. */
function avoidableShare(outletC, wetOutletC, totalKPa = 101.325) {
	const now = lostShare(outletC, totalKPa);
	const wet = lostShare(Math.min(wetOutletC, outletC), totalKPa);
	return {
		low: now.low - wet.low,
		high: now.high - wet.high
	};
}
/** Condensate of a drum while vapour flows, L/h, where no estimate is at hand: 20 to 40 L in 6 to 8 hours (trade facts 3.3, 3.4). */
var usualFlowLPerH = {
	low: 2,
	high: 6
};
// ../../work/w/calls/server/domain/alarms/probes.ts
/** Wire format 7. */
function isSilent(channel, at) {
	const { heardMs, periodS } = channel.track;
	return heardMs !== null && at - heardMs > Math.max(60, 6 * periodS) * 1e3;
}
/** Every 10 s. Where a whole node is gone it is the node that is told, not each of its probes. */
function judgeSilence(scene, tell) {
	const { at } = scene.look;
	const byNode = /* @__PURE__ */ new Map();
	for (const id in scene.channels) {
		const channel = scene.channels[id];
		if (channel === void 0 || channel.role === null || channel.track.heardMs === null) continue;
		const count = byNode.get(channel.node) ?? {
			silent: 0,
			all: 0
		};
		count.all++;
		if (isSilent(channel, at)) count.silent++;
		byNode.set(channel.node, count);
	}
	const gone = /* @__PURE__ */ new Set();
	for (const [node, { silent, all }] of byNode) {
		const willHeard = scene.lostNodes[node] !== void 0;
		const lost = willHeard || all > 1 && silent === all;
		if (lost) gone.add(node);
		tell({
			alarm: "node-lost",
			channel: node,
			sign: when(lost),
			because: [{
				code: willHeard ? "node-said-lost" : "node-silent",
				value: silent
			}],
			quiet: !scene.tended
		});
	}
	for (const id in scene.channels) {
		const channel = scene.channels[id];
		if (channel === void 0 || channel.role === null || channel.track.heardMs === null) continue;
		tell({
			alarm: "probe-silent",
			channel: id,
			sign: when(isSilent(channel, at)),
			because: [{
				code: "silent-for",
				value: (at - channel.track.heardMs) / 1e3,
				limit: Math.max(60, 6 * channel.track.periodS),
				channel: id
			}],
			quiet: !scene.tended || gone.has(channel.node)
		});
	}
}
/** A kiln in fire never keeps one number this long; a converter that hangs does. Slow channels apart. Common practice, no source. */
var stuckMs = 27e5;
/** Every minute. */
function judgeStuck(scene, tell) {
	const { at } = scene.look;
	const hot = scene.phase !== "idle" && scene.phase !== "cold" && scene.phase !== "cooling" && scene.phase !== "failed";
	for (const id in scene.channels) {
		const channel = scene.channels[id];
		if (channel === void 0 || channel.role === null || channel.changedAt === null) continue;
		const slow = channel.role === "ambient" || channel.role === "bottle" || channel.role === "co" || channel.track.periodS > 60;
		const heard = channel.track.heardMs !== null && at - channel.track.heardMs < 12e4;
		tell({
			alarm: "probe-stuck",
			channel: id,
			sign: when(hot && !slow && heard && channel.faultSince === null && at - channel.changedAt > stuckMs),
			because: [{
				code: "same-for",
				value: (at - channel.changedAt) / 6e4,
				limit: 45,
				channel: id
			}],
			quiet: !scene.tended
		});
	}
}
/** Every minute: orders of temperature that a burning kiln cannot have, and thermocouples with their legs crossed (instrument facts 1.5). */
function judgeSwapped(scene, tell) {
	const { past } = scene.look;
	const firebox = mean(past.firebox, 5);
	const wall = mean(past.wall, 5);
	const outlet = mean(past.outlet, 5);
	const smoke = mean(past.smoke, 5);
	const pairs = [
		["outlet-over-firebox", outlet === null || firebox === null ? null : outlet > 120 && outlet > firebox + 60],
		["outlet-over-smoke", outlet === null || smoke === null ? null : outlet > 60 && outlet > smoke + 30],
		["wall-over-firebox", wall === null || firebox === null ? null : wall > 250 && wall > firebox + 200 && scene.fire.established === false],
		["legs-crossed", [
			firebox,
			wall,
			outlet,
			smoke
		].every((v) => v === null) ? null : [
			firebox,
			wall,
			outlet,
			smoke
		].some((v) => v !== null && v < -25)]
	];
	const found = pairs.filter(([, yes]) => yes === true).map(([code]) => ({ code }));
	tell({
		alarm: "probe-swapped",
		channel: null,
		sign: when(pairs.some(([, yes]) => yes !== null) ? found.length > 0 : null),
		because: found,
		quiet: !scene.tended
	});
}
// ../../work/w/calls/server/domain/alarms/rules.ts
/** Over this, nearly everything goes through (instrument facts 8.3), whatever wet cloths reach. */
var hotOverWetK = 28;
/** After the stop it is mostly tar that gets away. Common practice, no source. */
var hotAfterStopK = 36;
/** So much over the tops that this operator usually lets happen is no cycle any more. Common practice, no source. */
var hotOverUsual = 1.4;
/** Limit of the hot alarm: the kiln's own, lifted where even wet cloths, or the usual cycle, do not get there. */
function hotLimitC(scene) {
	const { condenserWarningC } = scene.look.config.limits;
	const { wetC } = scene.condenser;
	if (wetC === null) return condenserWarningC + 20;
	const overK = scene.calls["stop-collecting"].state === "not-yet" ? hotOverWetK : hotAfterStopK;
	return Math.max(condenserWarningC, wetC + overK, wetC + hotOverUsual * (usualTopK(scene.condenser) ?? 0));
}
/** What the warmth costs beyond what wet cloths would lose, as shares and litres an hour. */
function costs(scene, outletC) {
	const { low, high } = avoidableShare(outletC, scene.condenser.wetC ?? scene.look.config.limits.condenserNoticeC - 5, pressureKPa(scene.look.config.altitudeM));
	return [
		{
			code: "vapour-lost-least",
			value: low
		},
		{
			code: "vapour-lost-most",
			value: high
		},
		{
			code: "litres-lost-least",
			value: low * scene.flowLPerH.low
		},
		{
			code: "litres-lost-most",
			value: high * scene.flowLPerH.high
		}
	];
}
/** Every good sample of the outlet. */
function judgeOutlet(scene, outletC, tell) {
	const { condenserDeadBandK, condenserOnDelayS, condenserOffDelayS } = scene.look.config.limits;
	const hot = hotLimitC(scene);
	const judged = scene.condenser.wettedAt !== null ? above(outletC, hot, condenserDeadBandK) : "unknown";
	tell({
		alarm: "condenser-hot",
		channel: null,
		sign: judged === "abnormal" && waits(scene, "condenser-hot") ? "between" : judged,
		because: [{
			code: "outlet-over",
			value: outletC,
			limit: hot
		}, ...costs(scene, outletC)],
		delays: {
			onS: condenserOnDelayS,
			offS: condenserOffDelayS
		},
		quiet: !worthCatching(scene) || isWithinHabit(scene.condenser, scene.look) || stands(scene, "condenser-warm")
	});
}
/** Every minute: cloths that stay dry for longer than this operator's cycle. */
function judgeDry(scene, tell) {
	const { condenser, look } = scene;
	const limit = dryLimitC(condenser, look);
	const now = mean(look.past.outlet, 2);
	if (limit === null || now === null) return;
	tell({
		alarm: "condenser-warm",
		channel: null,
		sign: isForgotten(condenser, look) && !waits(scene, "condenser-warm") ? "abnormal" : condenser.dryMin === 0 ? "normal" : "between",
		because: [{
			code: "outlet-over-wet",
			value: now,
			limit,
			forS: condenser.dryMin * 60
		}, ...costs(scene, now)],
		quiet: hotSpeaks(scene) || !worthCatching(scene)
	});
}
/** What comes before the start is thrown away anyhow. */
function worthCatching({ calls, phase }) {
	return calls["start-collecting"].state !== "not-yet" || phase === "vinegar" || phase === "tar" || phase === "clearing";
}
/** What passes by itself within minutes raises nothing; what stands, stands until it has passed. */
function waits({ board, condenser }, alarm) {
	return condenser.passing && board.items[alarm]?.on !== true;
}
/** The alarm is on and may be heard: one that is itself kept quiet speaks for nobody. */
function stands({ board }, alarm) {
	const item = board.items[alarm];
	return item?.on === true && item.state !== "suppressed" && item.state !== "out-of-service";
}
/** The hot alarm stands, or stood a moment ago and the outlet is on its way down. */
function hotSpeaks(scene) {
	const hot = scene.board.items["condenser-hot"];
	return stands(scene, "condenser-hot") || hot?.state === "normal" && scene.look.at - hot.since < 6e5;
}
/** Every sample of a carbon monoxide probe, ppm (trade facts 7.1.2). */
function judgeCo(scene, ppm, tell) {
	const { coCautionPpm, coLeavePpm } = scene.look.config.limits;
	const leave = ppm >= coLeavePpm;
	tell({
		alarm: "co-high",
		channel: null,
		sign: above(ppm, coCautionPpm, coCautionPpm / 5),
		because: [{
			code: "co-over",
			value: ppm,
			limit: leave ? coLeavePpm : coCautionPpm
		}],
		priority: leave ? "urgent" : "warning"
	});
}
/** Every 10 s. */
function judgeEvery10s(scene, tell) {
	judgeSilence(scene, tell);
	const armed = scene.look.facts.armedAt !== null;
	tell({
		alarm: "stop-overdue",
		channel: null,
		sign: when(armed && scene.calls["stop-collecting"].state === "due"),
		because: scene.calls["stop-collecting"].because
	});
	tell({
		alarm: "seal-overdue",
		channel: null,
		sign: when(armed && scene.calls.seal.state === "due"),
		because: scene.calls.seal.because
	});
}
/** Every minute. */
function judgeEveryMinute(scene, tell) {
	judgeDry(scene, tell);
	judgeWall(scene, tell);
	judgeVent(scene, tell);
	judgeStuck(scene, tell);
	judgeSwapped(scene, tell);
	const { cooling, look } = scene;
	if (cooling === null) return;
	const because = [
		...cooling.rose ?? [],
		...cooling.slow ?? [],
		...scene.modelLeak ? [{ code: "model-says-leak" }] : []
	];
	const known = mean(look.past.wall, 10) !== null;
	tell({
		alarm: "air-leak",
		channel: null,
		sign: when(because.length > 0 ? true : known ? false : null),
		because
	});
	tell({
		alarm: "reignition",
		channel: null,
		sign: when(cooling.relit !== null ? true : known ? false : null),
		because: cooling.relit ?? []
	});
}
// ../../work/w/calls/server/domain/firing/alarm.ts
function sceneAt(state, at) {
	return {
		look: lookAt(state, at),
		phase: state.phase.phase,
		phaseSince: state.phase.since,
		calls: state.calls,
		cooling: state.cooling,
		modelLeak: state.advice?.airLeak ?? false,
		condenser: state.condenser,
		flowLPerH: flowOf(state),
		fire: state.fire,
		board: state.board,
		channels: state.channels,
		lostNodes: state.lostNodes,
		tended: isTended(state)
	};
}
/** From the model where it runs, give or take two fifths; else what a drum usually gives. */
function flowOf(state) {
	const { estimate } = state;
	return estimate === null ? usualFlowLPerH : {
		low: .6 * estimate.condensateKgH,
		high: 1.4 * estimate.condensateKgH
	};
}
function sayItem(emit, at, item) {
	const { alarm, channel, state, priority, because } = item;
	emit.say(at, {
		kind: "alarm",
		alarm,
		...channel === null ? {} : { channel },
		state,
		priority,
		because
	});
}
function teller(state, at, emit) {
	return (telling) => {
		const { phase } = state.phase;
		emit.design.listener?.(at, phase, telling);
		const item = tell(state.board, emit.design.table, at, phase, telling);
		if (item !== null) sayItem(emit, at, item);
	};
}
/** The alarms that hang on a single sample. A faulty one changes nothing but the alarm of its probe. */
function alarmSample(state, id, channel, value, at, emit) {
	if (channel.role === null) return;
	const speak = teller(state, at, emit);
	speak({
		alarm: "probe-fault",
		channel: id,
		sign: when(channel.faultSince !== null),
		because: [],
		quiet: !isTended(state)
	});
	if (value === null || follows(state, id, channel)) return;
	switch (channel.role) {
		case "outlet": return judgeOutlet(sceneAt(state, at), value, speak);
		case "firebox": return judgeFire(sceneAt(state, at), value, speak);
		case "co": return judgeCo(sceneAt(state, at), value, speak);
		default: return;
	}
}
/** True where another channel of the same role comes first: two probes of one kind would quarrel over one alarm. */
function follows(state, id, channel) {
	for (const other in state.channels) {
		if (other === id) return false;
		if (state.channels[other]?.role === channel.role && state.channels[other].track.value !== null) return true;
	}
	return false;
}
function alarmGrid(state, at, emit) {
	const speak = teller(state, at, emit);
	const scene = sceneAt(state, at);
	judgeEvery10s(scene, speak);
	if (state.health["nobody-watching"] !== void 0) speak(nobody(state, true));
	if (at % 6e4 === 0) judgeEveryMinute(scene, speak);
	ebb(state.board, at);
}
function alarmTick(state, at, emit) {
	for (const item of tickBoard(state.board, emit.design.table, at)) sayItem(emit, at, item);
}
var nobody = (state, on) => ({
	alarm: "nobody-watching",
	channel: null,
	sign: when(on),
	because: [],
	quiet: state.facts.armedAt === null
});
/** Troubles of the service have their alarms here, so that alarms have one home. */
function alarmHealth(state, code, on, at, emit) {
	if (on) state.health[code] ??= at;
	else delete state.health[code];
	teller(state, at, emit)(code === "nobody-watching" ? nobody(state, on) : {
		alarm: code,
		channel: null,
		sign: when(on),
		because: []
	});
}
function alarmAct(state, input, emit) {
	const { act, at } = input;
	if (act.action !== "acknowledge" && act.action !== "shelve" && act.action !== "unshelve") return;
	const minutes = act.action === "shelve" ? act.minutes : 0;
	for (const item of order$1(state.board, emit.design.table, at, act.action, act.alarm, act.channel ?? null, minutes)) sayItem(emit, at, item);
}
// ../../work/w/calls/server/domain/firing/channel.ts
/** A role given in the configuration, or the last part of the channel's name where that is a role. */
function roleOf(config, channel) {
	const given = config.roles[channel];
	if (given !== void 0) return given;
	const last = channel.slice(channel.lastIndexOf("/") + 1);
	return roles.find((role) => role === last) ?? null;
}
function newChannel(config, id) {
	const node = id.split("/").slice(0, 2).join("/");
	return {
		role: roleOf(config, id),
		node,
		track: startTrack(5, .25),
		sum: 0,
		count: 0,
		changedAt: null,
		changedTo: null,
		faultSince: null
	};
}
/** Takes one sample in; returns its calibrated value where it may be used, else null. */
function hear(channel, sample, config, id) {
	trackSample(channel.track, sample, config.calibration[id]);
	if (sample.value === null) channel.faultSince ??= sample.t;
	else {
		channel.faultSince = null;
		if (sample.value !== channel.changedTo) {
			channel.changedTo = sample.value;
			channel.changedAt = sample.t;
		}
	}
	const { took } = channel.track;
	if (took === null) return null;
	channel.sum += took;
	channel.count += 1;
	return took;
}
// ../../work/w/calls/server/domain/alarms/tables/definitions.ts
var noFire = [
	"idle",
	"failed",
	"cooling",
	"cold"
];
var noVapour = [
	"idle",
	"kindling",
	"drying",
	"failed",
	"cooling",
	"cold"
];
var burning = [
	"idle",
	"kindling",
	"drying",
	"breakdown",
	"vinegar",
	"tar",
	"clearing",
	"failed"
];
/**
* Every alarm of the kiln. Priority from consequence and time to act (instrument facts 6.4): urgent is people or fire within minutes,
* warning is product or fuel lost this hour, notice is later.
*/
var alarmTable = {
	"condenser-warm": {
		priority: "warning",
		group: "condenser",
		onDelayS: 0,
		offDelayS: 45,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 60,
		quietIn: noVapour,
		source: "instrument facts 8.3",
		consequence: "vapour-lost",
		response: "wet-cloths"
	},
	"condenser-hot": {
		priority: "warning",
		group: "condenser",
		onDelayS: 15,
		offDelayS: 45,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 60,
		quietIn: noVapour,
		source: "instrument facts 8.3",
		consequence: "most-vapour-lost",
		response: "wet-cloths"
	},
	"fire-dying": {
		priority: "warning",
		group: "fire",
		onDelayS: 60,
		offDelayS: 60,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 60,
		quietIn: noFire,
		source: "common practice",
		consequence: "hours-lost",
		response: "feed-fire"
	},
	"fire-out": {
		priority: "warning",
		group: "fire",
		onDelayS: 60,
		offDelayS: 60,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 60,
		quietIn: [
			"idle",
			"cooling",
			"cold"
		],
		source: "common practice",
		consequence: "firing-fails",
		response: "relight"
	},
	"flame-inside": {
		priority: "urgent",
		group: "fire",
		onDelayS: 30,
		offDelayS: 120,
		latching: false,
		returnsByItself: false,
		realarmS: 600,
		longestShelveMin: 15,
		quietIn: [
			"idle",
			"kindling",
			"failed",
			"cooling",
			"cold"
		],
		source: "common practice",
		consequence: "charge-burns",
		response: "narrow-mouth"
	},
	"stop-overdue": {
		priority: "warning",
		group: "operator",
		onDelayS: 900,
		offDelayS: 0,
		latching: false,
		returnsByItself: true,
		realarmS: 600,
		longestShelveMin: 30,
		quietIn: noVapour,
		source: "the job: a stop 30 minutes late costs a quarter of the value",
		consequence: "tar-in-vinegar",
		response: "take-bottle-away"
	},
	"seal-overdue": {
		priority: "warning",
		group: "operator",
		onDelayS: 1800,
		offDelayS: 0,
		latching: false,
		returnsByItself: true,
		realarmS: 900,
		longestShelveMin: 30,
		quietIn: [
			"idle",
			"cooling",
			"cold",
			"failed"
		],
		source: "common practice",
		consequence: "charcoal-burns",
		response: "seal"
	},
	"air-leak": {
		priority: "warning",
		group: "sealed",
		onDelayS: 600,
		offDelayS: 3600,
		latching: true,
		returnsByItself: false,
		realarmS: 3600,
		longestShelveMin: 60,
		quietIn: burning,
		source: "trade facts 7.3.8",
		consequence: "charcoal-burns",
		response: "clay-on-gaps"
	},
	reignition: {
		priority: "urgent",
		group: "sealed",
		onDelayS: 60,
		offDelayS: 1800,
		latching: true,
		returnsByItself: false,
		realarmS: 600,
		longestShelveMin: 15,
		quietIn: burning,
		source: "trade facts 7.3.8, 7.3.10",
		consequence: "charcoal-burns",
		response: "close-again"
	},
	"vent-choked": {
		priority: "warning",
		group: "gas",
		onDelayS: 600,
		offDelayS: 300,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 30,
		quietIn: [
			"idle",
			"kindling",
			"failed",
			"cooling",
			"cold"
		],
		source: "trade facts 9.3 A",
		consequence: "gas-turns-back",
		response: "clear-vent"
	},
	"co-high": {
		priority: "urgent",
		group: "gas",
		onDelayS: 10,
		offDelayS: 300,
		latching: true,
		returnsByItself: false,
		realarmS: 300,
		longestShelveMin: 5,
		quietIn: [],
		source: "trade facts 7.1.2",
		consequence: "poison-air",
		response: "leave-upwind"
	},
	"probe-fault": {
		priority: "notice",
		group: "probe",
		onDelayS: 30,
		offDelayS: 21600,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 480,
		quietIn: [],
		source: "reliability 7.1",
		consequence: "blind",
		response: "check-probe"
	},
	"probe-silent": {
		priority: "notice",
		group: "probe",
		onDelayS: 10,
		offDelayS: 60,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 480,
		quietIn: [],
		source: "wire format 7",
		consequence: "blind",
		response: "check-node"
	},
	"probe-stuck": {
		priority: "notice",
		group: "probe",
		onDelayS: 0,
		offDelayS: 60,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 480,
		quietIn: ["idle", "cold"],
		source: "reliability 7.1",
		consequence: "blind",
		response: "check-probe"
	},
	"probe-swapped": {
		priority: "warning",
		group: "probe",
		onDelayS: 300,
		offDelayS: 300,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 480,
		quietIn: noFire,
		source: "instrument facts 1.5",
		consequence: "wrong-calls",
		response: "check-plugs"
	},
	"node-lost": {
		priority: "warning",
		group: "probe",
		onDelayS: 5,
		offDelayS: 30,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 120,
		quietIn: [],
		source: "wire format 7",
		consequence: "blind",
		response: "check-node"
	},
	"clock-suspect": {
		priority: "notice",
		group: "service",
		onDelayS: 0,
		offDelayS: 0,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 480,
		quietIn: [],
		source: "wire format, identity 3",
		consequence: "times-wrong",
		response: "set-clock"
	},
	"storage-failing": {
		priority: "warning",
		group: "service",
		onDelayS: 0,
		offDelayS: 0,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 60,
		quietIn: [],
		source: "reliability 2.1",
		consequence: "readings-unsaved",
		response: "free-disk"
	},
	"service-failing": {
		priority: "warning",
		group: "service",
		onDelayS: 0,
		offDelayS: 0,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 60,
		quietIn: [],
		source: "reliability 7.1",
		consequence: "blind",
		response: "watch-by-eye"
	},
	"nobody-watching": {
		priority: "warning",
		group: "operator",
		onDelayS: 0,
		offDelayS: 0,
		latching: false,
		returnsByItself: true,
		realarmS: null,
		longestShelveMin: 30,
		quietIn: ["idle"],
		source: "reliability 7.1",
		consequence: "nobody-hears",
		response: "wake-tablet"
	}
};
// ../../work/w/calls/server/domain/firing/emit.ts
var nothing = [];
function emitter(state, design) {
	const outputs = [];
	return {
		design,
		get outputs() {
			return outputs.length === 0 ? nothing : outputs;
		},
		say(at, said) {
			const short = "because" in said ? {
				...said,
				because: said.because.map(shortened)
			} : said;
			outputs.push({
				cause: state.cause,
				n: state.n++,
				at,
				...short
			});
		}
	};
}
/** Numbers of a reason to a thousandth: finer than any probe. */
function shortened(reason) {
	const cut = (value) => Math.round(value * 1e3) / 1e3;
	return {
		...reason,
		...reason.value === void 0 ? {} : { value: cut(reason.value) },
		...reason.limit === void 0 ? {} : { limit: cut(reason.limit) }
	};
}
// ../../work/w/calls/server/domain/text/utf8.ts
/** Bytes of a text, UTF-8. A lone surrogate half becomes U+FFFD, as the Encoding Standard has it. */
function encodeUtf8(text) {
	const bytes = new Uint8Array(text.length * 3);
	let length = 0;
	for (let i = 0; i < text.length; i++) {
		let code = text.charCodeAt(i);
		if (code >= 55296 && code <= 57343) {
			const low = code <= 56319 && i + 1 < text.length ? text.charCodeAt(i + 1) : 0;
			const paired = low >= 56320 && low <= 57343;
			code = paired ? 65536 + (code - 55296 << 10) + (low - 56320) : 65533;
			if (paired) i++;
		}
		if (code < 128) bytes[length++] = code;
		else if (code < 2048) {
			bytes[length++] = 192 | code >> 6;
			bytes[length++] = 128 | code & 63;
		} else if (code < 65536) {
			bytes[length++] = 224 | code >> 12;
			bytes[length++] = 128 | code >> 6 & 63;
			bytes[length++] = 128 | code & 63;
		} else {
			bytes[length++] = 240 | code >> 18;
			bytes[length++] = 128 | code >> 12 & 63;
			bytes[length++] = 128 | code >> 6 & 63;
			bytes[length++] = 128 | code & 63;
		}
	}
	return bytes.slice(0, length);
}
/** Text of some bytes, or null when they are not well-formed UTF-8 (RFC 3629: no overlong form, no surrogate, nothing above U+10FFFF). */
function decodeUtf8(bytes) {
	let text = "";
	let start = 0;
	let i = 0;
	while (i < bytes.length) {
		if ((bytes[i] ?? 0) < 128) {
			i++;
			continue;
		}
		text += asciiText(bytes, start, i);
		const length = sequenceLength(bytes, i);
		if (length === 0) return null;
		text += String.fromCodePoint(codePoint(bytes, i, length));
		i += length;
		start = i;
	}
	return text + asciiText(bytes, start, i);
}
/** Arguments of one call are bounded by the engine's stack, so a long text is made in pieces. */
var pieceLength = 4096;
function asciiText(bytes, from, to) {
	let text = "";
	for (let i = from; i < to; i += pieceLength) text += String.fromCharCode.apply(null, bytes.subarray(i, Math.min(to, i + pieceLength)));
	return text;
}
/** Length of the well-formed sequence at `i`, 0 when there is none (Unicode standard, table 3-7). */
function sequenceLength(bytes, i) {
	const first = bytes[i] ?? 0;
	const length = first >= 240 ? 4 : first >= 224 ? 3 : 2;
	if (first < 194 || first > 244 || i + length > bytes.length) return 0;
	const second = bytes[i + 1] ?? 0;
	if (second < (first === 224 ? 160 : first === 240 ? 144 : 128) || second > (first === 237 ? 159 : first === 244 ? 143 : 191)) return 0;
	for (let k = 2; k < length; k++) if (((bytes[i + k] ?? 0) & 192) !== 128) return 0;
	return length;
}
function codePoint(bytes, i, length) {
	let code = (bytes[i] ?? 0) & (length === 2 ? 31 : length === 3 ? 15 : 7);
	for (let k = 1; k < length; k++) code = code << 6 | (bytes[i + k] ?? 0) & 63;
	return code;
}
// ../../work/w/calls/server/domain/firing/freeze.ts
function freezeState$1(state, estimator) {
	const text = encodeUtf8(JSON.stringify({
		...state,
		model: null
	}));
	const model = estimator === null || state.model === null ? /* @__PURE__ */ new Uint8Array(0) : estimator.freeze(state.model);
	const bytes = new Uint8Array(4 + text.length + model.length);
	new DataView(bytes.buffer).setUint32(0, text.length, true);
	bytes.set(text, 4);
	bytes.set(model, 4 + text.length);
	return bytes;
}
function thawState$1(bytes, estimator) {
	const length = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0, true);
	const state = JSON.parse(decodeUtf8(bytes.subarray(4, 4 + length)) ?? "");
	const model = bytes.subarray(4 + length);
	state.model = estimator === null || model.length === 0 ? null : estimator.thaw(model);
	return state;
}
// ../../work/w/calls/server/domain/calls/forecast.ts
var minuteMs$3 = 6e4;
/** A small fire's firebox over the outlet, K, until there is half an hour of its own. Common practice, no source. */
var usualFireK = 550;
/** Heat in per mass, K·h/kg, at which simulated firings were best started and stopped: tenth, middle and ninth of ten. */
var startHeat = {
	early: 8,
	likely: 13,
	late: 21
};
var stopHeat = {
	early: 32,
	likely: 45,
	late: 72
};
/** Elapsed time at the stop over that at a wall of 160 °C, likewise. */
var stopOver160 = {
	early: 1.15,
	likely: 1.6,
	late: 2.6
};
/** Elapsed time at the seal over that at the stop, likewise. */
var sealOverStop = {
	early: 1.36,
	likely: 1.5,
	late: 1.75
};
/** The next turns by simple continuation of what is measured; meant to hold the truth four times out of five. */
function forecastCalls(look, window, calls) {
	const lit = look.litAt;
	if (lit === null || look.facts.sealedAt !== null) return {};
	const ranges = {};
	if (calls["start-collecting"].state === "not-yet") ranges["start-collecting"] = byHeat(look, window, startHeat);
	const stop = stopRange(look, window, lit);
	if (open(calls["stop-collecting"].state)) ranges["stop-collecting"] = stop;
	if (open(calls.seal.state)) ranges.seal = sealRange(look, window, lit, stop);
	return ranges;
}
var open = (state) => state === "not-yet" || state === "withdrawn";
function byHeat(look, window, heat) {
	const { wetKg } = chargeMass(look.config, look.facts.charge);
	const firebox = mean(look.past.firebox, 30);
	const outlet = mean(look.past.outlet, 30) ?? 40;
	const settled = look.past.firebox.values.length >= 30 && firebox !== null && look.litAt !== null && look.at - look.litAt > 40 * minuteMs$3;
	const perMin = Math.max(100, settled ? firebox - outlet : usualFireK) / 60 / wetKg;
	const dose = window.heat.sumKh / wetKg;
	const until = (level) => look.at + Math.max(0, level - dose) / perMin * minuteMs$3;
	const late = Math.max(heat.late, dose * 1.2);
	return {
		earliest: until(heat.early),
		likely: until(Math.max(heat.likely, Math.min(late, dose * 1.08))),
		latest: until(late)
	};
}
function stopRange(look, window, lit) {
	const smoke = mean(look.past.smoke, 10);
	if (smoke !== null && smoke > 95) return bySmoke(look, smoke, look.config.limits.smokeStopC - 15, 25);
	const heat = byHeat(look, window, stopHeat);
	const { wall160At } = window.heat;
	if (wall160At === null) return heat;
	const share = (over) => lit + over * (wall160At - lit);
	const middle = (a, b) => Math.max(look.at, (a + b) / 2);
	return {
		earliest: middle(heat.earliest, share(stopOver160.early)),
		likely: middle(heat.likely, share(stopOver160.likely)),
		latest: Math.max(middle(heat.latest, share(stopOver160.late)), look.at + 30 * minuteMs$3)
	};
}
function sealRange(look, window, lit, stop) {
	const smoke = mean(look.past.smoke, 10);
	if (smoke !== null && smoke > 170) return bySmoke(look, smoke, 280, 20);
	const { shutAt } = window;
	const from = shutAt === null ? stop : {
		earliest: shutAt,
		likely: shutAt + (shutAt - lit) * .12,
		latest: shutAt + (shutAt - lit) * .5
	};
	const share = (t, over) => Math.max(look.at, lit + over * (t - lit));
	return {
		earliest: share(from.earliest, sealOverStop.early),
		likely: share(from.likely, sealOverStop.likely),
		latest: share(from.latest, sealOverStop.late)
	};
}
function bySmoke(look, smoke, target, leastRate) {
	const rate = Math.max(leastRate, slope(look.past.smoke, 60) ?? leastRate);
	const minutes = Math.max(0, target - smoke) / rate * 60;
	return {
		earliest: look.at + minutes * .45 * minuteMs$3,
		likely: look.at + minutes * minuteMs$3,
		latest: look.at + (minutes * 2 + 25) * minuteMs$3
	};
}
// ../../work/w/calls/server/domain/calls/hints.ts
var minuteMs$2 = 6e4;
var soonMin = 25;
/** A glass of the drip every 20 minutes (the glass rack). */
var glassEveryMs = 20 * minuteMs$2;
/** What needs the hands before it becomes an alarm. Once a minute. */
function hintsOf(ground) {
	const hints = [];
	const put = (hint, by, because) => void hints.push({
		hint,
		by: Math.round(by / minuteMs$2) * minuteMs$2,
		because
	});
	feed(ground, put);
	wet(ground, put);
	bottle(ground, put);
	look(ground, put);
	return hints.sort((a, b) => a.by - b.by);
}
function feed({ look, fire, fireWanted }, put) {
	const now = mean(look.past.firebox, 2);
	const rate = slope(look.past.firebox, 8);
	if (!fireWanted || !fire.established || now === null || rate === null || rate > -60) return;
	const target = Math.max(dyingC(fire, look) + 40, .85 * (fire.usualC ?? 0));
	const minutes = Math.max(0, (now - target) / -rate * 60);
	if (minutes <= soonMin) put("feed-fire", look.at + minutes * minuteMs$2, [{
		code: "firebox-falls",
		value: rate
	}, {
		code: "firebox-now",
		value: now,
		limit: target
	}]);
}
function wet({ look, phase, condenser }, put) {
	if (phase === "idle" || phase === "kindling" || phase === "failed" || phase === "cooling" || phase === "cold") return;
	if (condenser.helped === false) return put("wet-cloths", look.at, [{ code: "wetting-did-not-help" }]);
	const minutes = minutesUntilDry(condenser, look, 8);
	if (minutes !== null && minutes <= 15) put("wet-cloths", look.at + minutes * minuteMs$2, [{
		code: "outlet-climbs",
		value: mean(look.past.outlet, 2) ?? 0,
		limit: (condenser.wetC ?? 0) + 8
	}]);
}
function bottle({ look, calls }, put) {
	const stop = calls["stop-collecting"];
	if (!(calls["start-collecting"].state === "due" || calls["start-collecting"].state === "done") || stop.state === "due" || stop.state === "done" || stop.forecast === null) return;
	const soon = stop.forecast.earliest - look.at < soonMin * minuteMs$2;
	const last = look.facts.lastBottleAt;
	if (soon && (last === null || look.at - last > 60 * minuteMs$2)) put("fresh-bottle", Math.max(look.at, stop.forecast.earliest), [{ code: "stop-may-come" }]);
	const glass = look.facts.lastGlassAt;
	if (glass !== null) put("take-glass", Math.max(look.at, glass + glassEveryMs), [{
		code: "glass-every",
		value: 20
	}]);
}
function look({ look, phase, calls, condenser }, put) {
	const drip = newest(look.facts.drip);
	const smoke = newest(look.facts.smoke);
	const old = (seen) => seen === null || look.at - seen.at > 30 * minuteMs$2;
	const due = (at, aheadMin) => at !== void 0 && at - look.at < aheadMin * minuteMs$2;
	const start = calls["start-collecting"];
	const stop = calls["stop-collecting"];
	if (condenser.vapourSince !== null && old(drip)) {
		if (start.state === "not-yet" && due(start.forecast?.earliest, 10)) put("check-drip", look.at + 10 * minuteMs$2, [{ code: "start-near" }]);
		else if (start.state !== "not-yet" && stop.state === "not-yet" && due(stop.forecast?.earliest, 10)) put("check-drip", look.at + 10 * minuteMs$2, [{ code: "stop-near" }]);
	}
	if ((phase === "tar" || phase === "clearing") && calls.seal.state === "not-yet" && old(smoke) && due(calls.seal.forecast?.earliest, 10)) put("check-smoke", look.at + 10 * minuteMs$2, [{ code: "seal-near" }]);
	const narrowed = look.facts.mouth === "hole" || look.facts.mouth === "half" || look.facts.mouth === "closed";
	if (look.config.way === "let-run" && look.facts.stoppedFeedingAt !== null && !narrowed && phase !== "cooling" && phase !== "cold") put("narrow-air", look.facts.stoppedFeedingAt + 15 * minuteMs$2, [{ code: "runs-by-itself" }]);
}
// ../../work/w/calls/server/domain/calls/propose.ts
var none = {
	due: false,
	withdraw: false,
	because: []
};
/** Smoke that is thin and clear: between the pale blue of 260 and the colourless 360 of the published tables (trade facts 1.2.10-1.2.15). */
var sealSmokeC = 280;
/** What each call should do now. Only what may stand in this phase is proposed. */
function propose(ground) {
	const { look, phase, open, openWithdraw } = ground;
	if (look.facts.sealedAt !== null) {
		if (open === null) return {};
		return { open: {
			due: open.due,
			withdraw: openWithdraw !== null,
			because: openWithdraw ?? open.because
		} };
	}
	if (phase === "idle") return {};
	return {
		"stop-feeding": stopFeeding(ground),
		"start-collecting": start(ground),
		"stop-collecting": stop(ground),
		seal: seal(ground)
	};
}
/** Let-run kilns only: the fire is taken away when the smoke is thick, white and jetting (trade facts 1.2.3, 2.16). */
function stopFeeding({ look, window }) {
	if (look.config.way !== "let-run") return none;
	const smoke = mean(look.past.smoke, 10);
	const wall = mean(look.past.wall, 10);
	const rate = slope(look.past.smoke, 20);
	if (window.shut) return none;
	if (smoke !== null) return smoke >= smokeBands.breakdown && (rate ?? 0) > 0 ? {
		due: true,
		withdraw: false,
		because: [{
			code: "smoke-over",
			value: smoke,
			limit: smokeBands.breakdown
		}]
	} : {
		...none,
		withdraw: smoke < smokeBands.breakdown - 15,
		because: [{
			code: "smoke-under",
			value: smoke,
			limit: smokeBands.breakdown - 15
		}]
	};
	return wall !== null && wall >= wallBands.breakdown && window.turning !== null ? {
		due: true,
		withdraw: false,
		because: [{
			code: "wall-over",
			value: wall,
			limit: wallBands.breakdown
		}, ...window.turning]
	} : none;
}
function start({ look, phase, window, calls }) {
	if (phase === "failed") return {
		due: false,
		withdraw: true,
		because: [{ code: "fire-failed" }]
	};
	if (calls["stop-collecting"].state === "due" || calls["stop-collecting"].state === "done") return none;
	const drip = newest(look.facts.drip);
	const since = calls["start-collecting"];
	if (since.state === "due" && drip?.look === "clear" && drip.at > since.since && !window.open) return {
		due: false,
		withdraw: true,
		because: [{ code: "seen-drip-clear" }]
	};
	return {
		due: window.open && !window.shut,
		withdraw: false,
		because: window.openBecause
	};
}
function stop({ look, window, calls }) {
	const drip = newest(look.facts.drip);
	const stop = calls["stop-collecting"];
	if (stop.state === "due" && !window.shut && drip !== null && drip.at > stop.since) return {
		due: false,
		withdraw: true,
		because: [{ code: `seen-drip-${drip.look}` }]
	};
	return {
		due: window.shut && window.open,
		withdraw: false,
		because: window.shutBecause
	};
}
function seal({ look, phase, window, advice }) {
	if (!window.shut && !(window.open && advice?.seal)) return none;
	const smoke = mean(look.past.smoke, 10);
	if (newest(look.facts.smoke)?.look === "clear" && (smoke === null || smoke >= smokeBands.clearing - 40)) return {
		due: true,
		withdraw: false,
		because: [{ code: "seen-smoke-clear" }]
	};
	if (smoke !== null) {
		if (phase === "clearing" && smoke >= sealSmokeC) return {
			due: true,
			withdraw: false,
			because: [{
				code: "smoke-over",
				value: smoke,
				limit: sealSmokeC
			}]
		};
		if (advice?.seal) return {
			due: true,
			withdraw: false,
			because: advice.because.seal ?? []
		};
		const low = 250;
		return {
			due: false,
			withdraw: smoke < low,
			because: [{
				code: "smoke-under",
				value: smoke,
				limit: low
			}]
		};
	}
	if (advice !== null && advice.collectWorthPerH !== null) return {
		due: advice.seal,
		withdraw: false,
		because: advice.because.seal ?? []
	};
	return {
		due: phase === "clearing" && window.charred !== null,
		withdraw: false,
		because: window.charred ?? []
	};
}
/** When the operator did what a call asks for. */
function doneOf(look) {
	const { facts } = look;
	const done = {};
	if (facts.startedAt !== null) done["start-collecting"] = facts.startedAt;
	if (facts.stoppedAt !== null) done["stop-collecting"] = facts.stoppedAt;
	if (facts.stoppedFeedingAt !== null) done["stop-feeding"] = facts.stoppedFeedingAt;
	if (facts.sealedAt !== null) done.seal = facts.sealedAt;
	const opened = facts.openedAt ?? facts.crackedAt;
	if (opened !== null) done.open = opened;
	return done;
}
// ../../work/w/calls/server/domain/cooling/fit.ts
function startCooling(sealedAt) {
	return {
		sealedAt,
		firstK: null,
		points: [],
		lowestK: null,
		wallLowC: null,
		fireboxLowC: null,
		coreLowC: null,
		rose: null,
		slow: null,
		relit: null,
		wallOff: null,
		fitSince: null,
		doubts: [],
		hottestC: null
	};
}
/**
* Hottest part over the air when sealed, K, as far back as the straight line reaches. Un-aided charring tops out near 400 (trade facts 1.1.13) and
* good charcoal wants 500 (1.1.14); simulated kilns gave 330 to 490; refining goes on to 700.
*/
var hottestAtSealK = 530;
var hottestRefinedK = 750;
var hourMs$2 = 36e5;
/** The air about the kiln: its own probe, or the coolest of those that stand outside, which follow it once sealed. */
function airC(look) {
	const ambient = mean(look.past.ambient, 20);
	if (ambient !== null) return {
		value: ambient,
		measured: true
	};
	const outside = [mean(look.past.outlet, 20), mean(look.past.smoke, 20)].filter((v) => v !== null);
	return outside.length === 0 ? null : {
		value: Math.min(...outside),
		measured: false
	};
}
/** Every ten minutes while sealed. */
function stepCooling(cooling, look, cold) {
	const air = airC(look);
	const wall = mean(look.past.wall, 10);
	const elapsedMs = look.at - cooling.sealedAt;
	const over = air === null || wall === null ? null : wall - Math.max(-6, Math.min(6, cold.wallOverAirK ?? 0)) - air.value;
	if (over !== null && cooling.firstK === null && elapsedMs < hourMs$2) cooling.firstK = over;
	cooling.points.push(over === null ? null : Math.round(over * 1e3) / 1e3);
	cooling.wallOff ??= fellOff(cooling, over);
	cooling.hottestC = air === null || over === null ? null : hottest(cooling, look, over, air.value);
	leaks(cooling, look, over, elapsedMs);
}
var keptIn20Min = .7;
var keptInHour = .5;
/** Nearer to the air a shower or the sun moves the wall as fast, K. */
var fallFromK = 40;
function fellOff(cooling, over) {
	if (over === null) return null;
	const last = cooling.points.length - 1;
	const falls = (back, kept) => {
		const before = cooling.points[last - back];
		return before !== null && before !== void 0 && before > fallFromK && over < kept * before;
	};
	return falls(1, keptIn20Min) || falls(2, keptIn20Min) || falls(6, keptInHour) ? [{
		code: "wall-fell-off",
		value: over
	}] : null;
}
/** Upper bound of the hottest part, °C. */
function hottest(cooling, look, over, air) {
	const start = look.facts.refinedAt === null ? hottestAtSealK : hottestRefinedK;
	const share = Math.max(1.15, start / Math.max(120, cooling.firstK ?? 200));
	const core = mean(look.past.core, 10);
	return Math.max(air + Math.max(0, over) * share, core ?? -273);
}
/** From trials, no source. */
var wallRiseK = 5;
function leaks(cooling, look, over, elapsedMs) {
	const core = mean(look.past.core, 10);
	const firebox = mean(look.past.firebox, 10);
	if (elapsedMs < hourMs$2) return;
	const rises = [];
	const wall = mean(look.past.wall, 10);
	if (over !== null && wall !== null) {
		const low = cooling.lowestK = Math.min(cooling.lowestK ?? over, over);
		const lowC = cooling.wallLowC = Math.min(cooling.wallLowC ?? wall, wall);
		const limit = Math.max(wallRiseK, .04 * low);
		const rise = Math.min(over - low, wall - lowC);
		if (rise > limit) rises.push({
			code: "wall-rose",
			value: rise,
			limit
		});
	}
	if (core !== null) {
		const low = cooling.coreLowC = Math.min(cooling.coreLowC ?? core, core);
		if (core > low + 6) rises.push({
			code: "core-rose",
			value: core - low,
			limit: 6
		});
	}
	if (firebox !== null) {
		const low = cooling.fireboxLowC = Math.min(cooling.fireboxLowC ?? firebox, firebox);
		if (firebox > low + 25) rises.push({
			code: "firebox-rose",
			value: firebox - low,
			limit: 25
		});
	}
	cooling.rose = rises.length > 0 ? rises : null;
	cooling.relit = rises.some((r) => (r.value ?? 0) > 40) ? rises : null;
	cooling.slow = slowing(cooling);
}
/** Fall of the logarithm per hour between two ten-minute points; null where either is missing or near nothing. */
function ratePerH(cooling, from, to) {
	const a = cooling.points[from];
	const b = cooling.points[to];
	if (a === null || a === void 0 || b === null || b === void 0 || a <= 2 || b <= 2) return null;
	return Math.log(a / b) * 6 / (to - from);
}
/** Tight kilns slow down as well, the heat has farther to go: down to two fifths of the first hours on trials, no source. */
var slowShare = .4;
/** Nearer to the air a change of the weather looks the same, K. */
var slowOverK = 25;
/** Slower by far than this kiln's own first hours while still well above the air: something inside keeps burning. */
function slowing(cooling) {
	const last = cooling.points.length - 1;
	if (last < 48) return null;
	const over = cooling.points[last];
	const first = ratePerH(cooling, 9, 36);
	const now = ratePerH(cooling, last - 24, last);
	if (over === null || over === void 0 || over < slowOverK || first === null || now === null) return null;
	return now < slowShare * first ? [{
		code: "cools-slower",
		value: now,
		limit: slowShare * first
	}] : null;
}
/** How long it still takes until the bound is under `limitC` at the rate of this kiln, ms: never a promise, only "not before". */
function notBefore(cooling, look, limitC) {
	const air = airC(look);
	const last = cooling.points.length - 1;
	if (air === null || cooling.hottestC === null || last < 12) return null;
	const rate = ratePerH(cooling, Math.max(6, last - 24), last) ?? .13;
	const over = cooling.hottestC - air.value;
	const target = Math.max(3, limitC - air.value);
	if (over <= target) return look.at;
	return look.at + Math.log(over / target) / Math.max(.03, rate) * hourMs$2;
}
// ../../work/w/calls/server/domain/cooling/open.ts
var hourMs$1 = 36e5;
/** Everything must hold together for so long, and longer for each probe (core, air) that is missing: common practice, no source. */
var holdMs = hourMs$1 / 3;
var doubtMs = .4 * hourMs$1;
/** Sealed-side probes count as near the air within this, K. The wall has its own, stricter bound. */
var nearK = 20;
/** How far the model's 99.9 % bound lies above what its kilns really had, K (trials: 3 to 50). */
var modelDoubtK = 60;
/** The safety call. Every ten minutes while sealed: each condition by itself, and all of them for a while. */
function judgeOpen(cooling, look, modelUpperC, modelLeak) {
	const { openHottestC, openMinimumWaitH } = look.config.limits;
	const air = airC(look);
	const because = [];
	const unless = [];
	const put = (holds, reason) => void (holds ? because : unless).push(reason);
	const sealedH = (look.at - cooling.sealedAt) / hourMs$1;
	put(sealedH >= openMinimumWaitH, {
		code: "sealed-for",
		value: sealedH,
		limit: openMinimumWaitH
	});
	const bound = cooling.hottestC;
	if (bound === null) unless.push({ code: "hottest-unknown" });
	else put(bound < openHottestC, {
		code: "hottest-below",
		value: bound,
		limit: openHottestC
	});
	if (modelUpperC !== null) put(modelUpperC < openHottestC + modelDoubtK, {
		code: "model-hottest",
		value: modelUpperC,
		limit: openHottestC + modelDoubtK
	});
	for (const role of [
		"firebox",
		"smoke",
		"core"
	]) {
		const value = mean(look.past[role], 20);
		if (value === null || air === null) continue;
		put(value < Math.min(openHottestC, air.value + nearK), {
			code: `${role}-near-air`,
			value,
			limit: Math.min(openHottestC, air.value + nearK)
		});
	}
	const rate = slope(look.past.wall, 120);
	const airRate = slope(look.past.ambient, 120) ?? slope(look.past.outlet, 120) ?? 0;
	if (rate === null) unless.push({ code: "wall-unknown" });
	else put(rate <= Math.max(.5, airRate + .5), {
		code: "wall-falling",
		value: rate
	});
	put(cooling.rose === null, cooling.rose?.[0] ?? { code: "no-rise" });
	put(cooling.slow === null && !modelLeak, cooling.slow?.[0] ?? { code: "no-leak" });
	if (cooling.wallOff !== null) unless.push(...cooling.wallOff);
	cooling.doubts = cooling.wallOff === null ? [] : [...cooling.wallOff];
	if (mean(look.past.core, 20) === null) cooling.doubts.push({ code: "no-core-probe" });
	if (air?.measured !== true) cooling.doubts.push({ code: "no-air-probe" });
	cooling.fitSince = unless.length === 0 ? cooling.fitSince ?? look.at : null;
	const hold = holdMs + doubtMs * cooling.doubts.length;
	return {
		due: cooling.fitSince !== null && look.at - cooling.fitSince >= hold,
		because,
		unless
	};
}
/** A due opening is taken back on any rise, or when the bound is clearly over its limit again. */
function mustWithdraw(cooling, look) {
	if (cooling.rose !== null) return cooling.rose;
	if (cooling.wallOff !== null) return cooling.wallOff;
	if (cooling.slow !== null) return cooling.slow;
	const limit = look.config.limits.openHottestC + 3;
	return cooling.hottestC !== null && cooling.hottestC > limit ? [{
		code: "hottest-over",
		value: cooling.hottestC,
		limit
	}] : null;
}
// ../../work/w/calls/server/domain/firing/grid.ts
var gridMs = 1e4;
var minuteMs$1 = 6e4;
var forecastEveryMs$1 = 3e5;
/** A hint is said again when its time moved by so much, and not before so long. */
var hintMovedMs = 4 * minuteMs$1;
var hintRestMs = 5 * minuteMs$1;
/** One step of 10 s: readings, model, minute rules, phase, calls, alarms, forecast. */
function stepGrid(state, estimator, at, emit) {
	state.now = gather(state);
	const newMinute = at % minuteMs$1 === 0;
	if (newMinute) for (const role of roles) write(state.past[role], at - 1, state.now[role] ?? null);
	if (estimator !== null) stepModel(state, estimator, at);
	const look = lookAt(state, at);
	if (newMinute) stepMinute(state, look);
	stepPhases(state, look, emit);
	const changed = stepCallStates(state, look, emit);
	alarmGrid(state, at, emit);
	if (newMinute && state.estimate !== null) emit.say(at, {
		kind: "estimate",
		estimate: state.estimate
	});
	if (litAtOf(state) !== null && state.phase.phase !== "idle" && (changed || state.forecastAt === null || at - state.forecastAt >= forecastEveryMs$1)) stepForecast(state, estimator, look, emit);
	if (newMinute) stepHints(state, look, emit);
}
function stepMinute(state, look) {
	if (look.litAt === null) coldStart(state, look);
	stepFire(state.fire, look);
	stepCondenser(state.condenser, look);
	if (look.facts.sealedAt === null) {
		state.cooling = null;
		state.open = null;
		state.openNotBefore = null;
		if (state.phase.phase === "failed") state.window = startWindow();
		else if (look.litAt !== null) stepWindow(state.window, look, state.advice);
		return;
	}
	if (state.cooling?.sealedAt !== look.facts.sealedAt) state.cooling = startCooling(look.facts.sealedAt);
	if (look.at % 6e5 !== 0) return;
	stepCooling(state.cooling, look, state.cold);
	state.open = judgeOpen(state.cooling, look, state.advice?.hottestUpperC ?? null, state.advice?.airLeak ?? false);
	state.openNotBefore = notBefore(state.cooling, look, state.config.limits.openHottestC);
}
/** Before lighting all probes stand in the same air: how far the wall's reading is off is learnt here. */
function coldStart(state, look) {
	const wall = mean(look.past.wall, 10);
	const air = airC(look);
	if (wall !== null && air !== null && wall < 60) state.cold.wallOverAirK = wall - air.value;
}
function stepPhases(state, look, emit) {
	if (!stepPhase(state.phase, look, state.window, coldBecause(state, look))) return;
	const { phase, because } = state.phase;
	const open = state.ribbon.at(-1);
	if (open !== void 0) open.to = look.at;
	state.ribbon.push({
		phase,
		from: look.at,
		to: null
	});
	if (phase === "kindling" && look.facts.litAt === null) {
		const litAt = litAtOf(state) ?? look.at;
		state.firing ??= firingId(state, litAt);
		state.evidence.push({
			at: litAt,
			kind: "lit"
		});
	}
	emit.say(look.at, {
		kind: "phase",
		phase,
		because
	});
}
/** Cold is what the opening call found; a gap opened before it was due makes nothing cold. */
function coldBecause(state, look) {
	const { open } = state.calls;
	if (open.state === "due") return open.because;
	return state.phase.phase === "cold" && open.state === "done" && state.cooling !== null && mustWithdraw(state.cooling, look) === null ? state.phase.because : null;
}
function stepCallStates(state, look, emit) {
	const ground = {
		look,
		phase: state.phase.phase,
		window: state.window,
		calls: state.calls,
		advice: state.advice,
		open: state.open,
		openWithdraw: state.cooling === null ? null : mustWithdraw(state.cooling, look)
	};
	const changes = stepCalls(state.calls, propose(ground), doneOf(look), look.at);
	for (const { call, state: turned, because } of changes) emit.say(look.at, {
		kind: "call",
		call,
		state: turned,
		because
	});
	return changes.length > 0;
}
function stepForecast(state, estimator, look, emit) {
	state.forecastAt = look.at;
	const rules = forecastCalls(look, state.window, state.calls);
	const known = estimator !== null && state.model !== null && state.estimate !== null ? estimator.forecast(state.model) : null;
	state.forecast = known?.view ?? null;
	for (const call of [
		"stop-feeding",
		"start-collecting",
		"stop-collecting",
		"seal"
	]) {
		const standing = state.calls[call];
		const range = rules[call] === void 0 ? null : known?.calls[call] ?? rules[call];
		standing.forecast = range;
		if (range !== null) emit.say(look.at, {
			kind: "forecast",
			call,
			earliest: Math.round(range.earliest),
			likely: Math.round(range.likely),
			latest: Math.round(range.latest)
		});
	}
}
function stepHints(state, look, emit) {
	if (look.litAt === null || look.facts.sealedAt !== null || state.phase.phase === "idle") {
		state.hints = [];
		return;
	}
	state.hints = hintsOf({
		look,
		phase: state.phase.phase,
		calls: state.calls,
		fire: state.fire,
		fireWanted: fireIsWanted(sceneAt(state, look.at)),
		condenser: state.condenser
	});
	for (const { hint, by, because } of state.hints) {
		const last = state.said[hint];
		if (last !== void 0 && (look.at - last.at < hintRestMs || Math.abs(by - last.by) < hintMovedMs)) continue;
		state.said[hint] = {
			at: look.at,
			by
		};
		emit.say(look.at, {
			kind: "hint",
			hint,
			by,
			because
		});
	}
}
/** Means of the good samples of the last 10 s; a slower channel keeps its last good value while it is heard. */
function gather(state) {
	const now = {};
	const at = state.nextGridAt;
	for (const id in state.channels) {
		const channel = state.channels[id];
		if (channel === void 0) continue;
		const { role, track } = channel;
		if (role !== null && now[role] === void 0) {
			const fresh = track.heardMs !== null && at - track.heardMs <= Math.max(15, 3 * track.periodS) * 1e3;
			if (channel.count > 0) now[role] = channel.sum / channel.count;
			else if (track.value !== null && track.quality === "good" && fresh && !track.nodeLost) now[role] = track.value;
		}
		channel.sum = 0;
		channel.count = 0;
	}
	return now;
}
// ../../work/w/calls/server/domain/firing/command.ts
/** What the operator is told now: the first that applies, the safest first. */
function standingOf(state) {
	const { facts, phase, calls } = state;
	const collecting = calls["start-collecting"].state;
	const stopping = calls["stop-collecting"].state;
	if (facts.unloadedAt !== null || facts.openedAt !== null) return {
		do: "none",
		call: null,
		next: null
	};
	if (facts.sealedAt !== null) return calls.open.state === "due" || facts.crackedAt !== null && phase.phase === "cold" ? {
		do: "trial-opening",
		call: "open",
		next: null
	} : {
		do: "keep-shut",
		call: null,
		next: null
	};
	if (phase.phase === "failed") return {
		do: "relight",
		call: null,
		next: null
	};
	if (phase.phase === "idle" && facts.litAt !== null) return {
		do: "wait",
		call: null,
		next: "start-collecting"
	};
	if (phase.phase === "idle") return {
		do: facts.loadedAt === null ? "none" : "light",
		call: null,
		next: null
	};
	if (calls.seal.state === "due") return {
		do: "seal",
		call: "seal",
		next: null
	};
	if (stopping === "due") return {
		do: "stop-collecting",
		call: "stop-collecting",
		next: "seal"
	};
	if (calls["stop-feeding"].state === "due") return {
		do: "stop-feeding",
		call: "stop-feeding",
		next: "start-collecting"
	};
	if (stopping === "done") return {
		do: "wait",
		call: null,
		next: "seal"
	};
	if (collecting === "done") return {
		do: "collect",
		call: "start-collecting",
		next: "stop-collecting"
	};
	if (collecting === "due") return {
		do: "start-collecting",
		call: "start-collecting",
		next: "stop-collecting"
	};
	return {
		do: "wait",
		call: null,
		next: "start-collecting"
	};
}
function commandView(state) {
	const standing = standingOf(state);
	const call = standing.call === null ? null : state.calls[standing.call];
	const range = standing.next === null ? null : state.calls[standing.next].forecast;
	return {
		do: standing.do,
		since: call?.since ?? state.phase.since,
		next: standing.next === null || range === null ? null : {
			call: standing.next,
			range
		},
		notBefore: standing.do === "keep-shut" ? state.openNotBefore : null,
		because: becauseOf(state, standing, call?.because ?? state.phase.because),
		unless: unlessOf(state, standing),
		sure: sureOf(state, standing),
		doubts: doubtsOf(state)
	};
}
function becauseOf(state, standing, because) {
	return standing.do === "keep-shut" && state.open !== null ? state.open.unless : because;
}
/** What would turn the command. */
function unlessOf(state, standing) {
	switch (standing.do) {
		case "wait": return standing.next === "start-collecting" ? [{ code: "seen-smoke-yellow" }, { code: "seen-drip-pale" }] : [{ code: "seen-smoke-clear" }];
		case "start-collecting": return [{ code: "seen-drip-clear" }];
		case "collect": return [{ code: "seen-drip-dark" }];
		case "stop-collecting": return [{ code: "seen-drip-pale" }];
		case "trial-opening": return [{ code: "any-rise" }];
		default: return state.open?.unless ?? [];
	}
}
function sureOf(state, standing) {
	if (standing.call === null ? false : state.calls[standing.call].because.some((r) => r.code.startsWith("seen-") || r.code === "logged")) return "high";
	if (state.advice?.collectWorthPerH !== null && state.advice !== null) return state.advice.sure;
	if (mean(state.past.smoke, 10) !== null) return "middle";
	return "low";
}
/** What cannot be judged, and why: a role that nothing is heard of, a charge that nobody weighed. */
function doubtsOf(state) {
	const doubts = [];
	if (state.facts.sealedAt !== null) doubts.push(...state.cooling?.doubts ?? []);
	for (const role of [
		"firebox",
		"wall",
		"outlet"
	]) if (mean(state.past[role], 5) === null) doubts.push({ code: `no-${role}` });
	const fitted = Object.entries(state.channels).find(([, channel]) => channel.role === "smoke");
	if (mean(state.past.smoke, 10) === null) doubts.push(fitted === void 0 ? { code: "no-smoke-probe" } : {
		code: "smoke-probe-failed",
		channel: fitted[0]
	});
	if (chargeMass(state.config, state.facts.charge).assumed) doubts.push({
		code: "charge-assumed",
		value: chargeMass(state.config, state.facts.charge).wetKg
	});
	return doubts;
}
// ../../work/w/calls/server/domain/firing/guess.ts
/** How far three fronts have come from the mouth to the chimney, 0 to 1: dry, breaking down, charred. A picture, not a measurement. */
var fronts = {
	idle: [
		0,
		0,
		0
	],
	kindling: [
		.1,
		0,
		0
	],
	drying: [
		.45,
		.15,
		0
	],
	breakdown: [
		.7,
		.4,
		.1
	],
	vinegar: [
		.9,
		.65,
		.3
	],
	tar: [
		1,
		.9,
		.65
	],
	clearing: [
		1,
		1,
		.9
	],
	cooling: [
		1,
		1,
		1
	],
	cold: [
		1,
		1,
		1
	],
	failed: [
		.3,
		.05,
		0
	]
};
var slices = 8;
var blur = .25;
/** Where no model runs: what the wood may look like in this phase, marked as coming from the phase only. Null before lighting. */
function guessEstimate(state) {
	if (litAtOf(state) === null) return null;
	const { phase } = state.phase;
	const [dry, breaking, charred] = fronts[phase];
	const inside = Array.from({ length: slices }, (_, i) => {
		const place = (i + .5) / slices;
		const past = (front) => Math.min(1, Math.max(0, (front - place) / blur + .5));
		const c = past(charred);
		const b = Math.max(c, past(breaking));
		const d = Math.max(b, past(dry));
		return [
			1 - d,
			d - b,
			b - c,
			c
		];
	});
	const smoke = mean(state.past.smoke, 5);
	const collecting = phase === "vinegar";
	return {
		smokeC: smoke ?? 30 + 60 * dry + 60 * breaking + 180 * charred,
		smokeSd: smoke === null ? 35 : 3,
		acidShare: collecting ? .08 : phase === "tar" || phase === "clearing" ? .06 : .01,
		acidSd: .05,
		tarShare: phase === "tar" || phase === "clearing" ? .2 : collecting ? .06 : .01,
		tarSd: .06,
		condensateKgH: phase === "drying" || phase === "breakdown" || collecting ? 4 : phase === "tar" ? 2.5 : 0,
		condensateKg: 0,
		charShare: charred,
		charSd: .2,
		inside,
		from: "phase"
	};
}
// ../../work/w/calls/server/domain/firing/view.ts
/** All that a page shows of the kiln at `at`. Changes nothing. */
function viewOf(state, at) {
	return {
		firing: firingView(state),
		channels: channelViews(state, at),
		command: commandView(state),
		calls: calls.map((call) => ({
			call,
			...state.calls[call]
		})),
		alarms: boardView(state.board),
		estimate: state.estimate ?? guessEstimate(state),
		forecast: state.forecast,
		hints: state.facts.sealedAt === null ? state.hints : [],
		hands: handsView(state, at)
	};
}
function firingView(state) {
	const { config, facts, phase } = state;
	return {
		kiln: config.kiln,
		kilnName: config.name,
		way: config.way,
		firing: facts.unloadedAt === null ? state.firing : null,
		litAt: litAtOf(state),
		litInferred: facts.litAt === null && phase.litInferredAt !== null,
		armedAt: facts.armedAt,
		collectingSince: facts.stoppedAt === null ? facts.startedAt : null,
		sealedAt: facts.sealedAt,
		phase: phase.phase,
		phaseSince: phase.since,
		because: phase.because,
		ribbon: state.ribbon.map((span) => ({ ...span })),
		acts: [...state.acts],
		lastWettedAt: facts.wettings.at(-1) ?? null,
		lastFedAt: facts.feeds.at(-1) ?? null,
		bottle: {
			number: facts.bottleNumber,
			litres: facts.bottleLitres
		},
		charge: {
			...config.charge,
			...facts.charge
		},
		band: {
			startC: config.limits.smokeStartC,
			stopC: config.limits.smokeStopC
		},
		sign: config.sign ?? null
	};
}
/** A fed fire, and cloths that dry, swing within a quarter of an hour: what is told is the run over about twice that, min. */
var trendMin = 30;
function channelViews(state, at) {
	const views = [];
	const seen = /* @__PURE__ */ new Set();
	for (const [id, { role, track }] of Object.entries(state.channels)) {
		if (role === null) continue;
		const { value, quality, t, heard, slopePerH, slopeSd, error } = readTrack(track, at);
		const long = slopePerH === null || seen.has(role) ? null : trendOver(state.past[role], trendMin);
		if (value !== null) seen.add(role);
		const trend = long ?? {
			slopePerH,
			slopeSd
		};
		views.push({
			channel: id,
			role,
			value,
			quality,
			t,
			heard,
			periodS: track.periodS,
			...trend,
			error
		});
	}
	return views;
}
/**
* The next thing that needs hands: a standing call, else the nearest hint, else the nearest turn. Never that one may leave, and once sealed
* nothing until the trial opening is due: no hour is named for it.
*/
function handsView(state, at) {
	if (litAtOf(state) === null || state.facts.unloadedAt !== null) return null;
	const sealed = state.facts.sealedAt !== null;
	for (const call of calls) {
		const { state: stands, since } = state.calls[call];
		const past = sealed ? call !== "open" : call === "start-collecting" && state.calls["stop-collecting"].state !== "not-yet";
		if (stands === "due" && !past) return {
			next: call,
			at: since
		};
	}
	if (sealed) return null;
	const turns = state.hints.map(({ hint, by }) => ({
		next: hint,
		at: Math.max(at, by)
	}));
	for (const call of calls) {
		const { forecast, state: stands } = state.calls[call];
		if (forecast !== null && call !== "open" && (stands === "not-yet" || stands === "withdrawn")) turns.push({
			next: call,
			at: Math.max(at, forecast.earliest)
		});
	}
	turns.sort((a, b) => a.at - b.at);
	return turns[0] ?? null;
}
// ../../work/w/calls/server/domain/firing/fold.ts
/**
* The fold of one kiln. Outputs are numbered by the last journalled input (`cause`) and count on (`n`) through the ticks after it.
* @param estimator the physical model kept in step, or null: then the rules alone judge.
* @param design other delays than those of the table, for studies.
*/
function makeKilnFold(estimator, design = {
	table: alarmTable,
	listener: null
}) {
	return {
		version: 6 + 1e3 * (estimator?.version ?? 0),
		start: (config) => startState(config),
		step(state, input) {
			if (input.kind !== "tick" && input.seq !== state.cause) {
				state.cause = input.seq;
				state.n = 0;
			}
			const emit = emitter(state, design);
			if (state.nextGridAt === 0) state.nextGridAt = Math.ceil(input.at / gridMs) * gridMs;
			for (; state.nextGridAt <= input.at; state.nextGridAt += gridMs) stepGrid(state, estimator, state.nextGridAt, emit);
			take(state, input, emit);
			alarmTick(state, input.at, emit);
			state.at = input.at;
			return {
				state,
				outputs: emit.outputs
			};
		},
		view: viewOf,
		freeze: (state) => freezeState$1(state, estimator),
		thaw: (bytes) => thawState$1(bytes, estimator)
	};
}
function channelOf(state, id) {
	return state.channels[id] ??= newChannel(state.config, id);
}
function take(state, input, emit) {
	switch (input.kind) {
		case "sample": return takeSample(state, input, emit);
		case "channel":
			describeTrack(channelOf(state, input.channel).track, input.periodS, input.lsb, input.probe ?? null);
			return;
		case "node":
			if (input.is === "up") delete state.lostNodes[input.node];
			else state.lostNodes[input.node] ??= input.at;
			for (const channel of Object.values(state.channels)) if (channel.node === input.node) trackNode(channel.track, input.is);
			return;
		case "act":
			if (!takeAct(state, input)) return;
			alarmAct(state, input, emit);
			if (input.act.action === "reading") takeByHand(state, input, input.act, emit);
			return;
		case "config":
			state.config = input.config;
			for (const [id, channel] of Object.entries(state.channels)) channel.role = roleOf(input.config, id);
			return;
		case "health":
			alarmHealth(state, input.code, input.on, input.at, emit);
			return;
		case "tick": return;
	}
}
function takeSample(state, input, emit) {
	if (input.late) return;
	const channel = channelOf(state, input.channel);
	delete state.lostNodes[channel.node];
	const value = hear(channel, input, state.config, input.channel);
	alarmSample(state, input.channel, channel, value, input.at, emit);
}
/** A number read from a hand thermometer counts as a reading; the next is due when somebody looks again. */
var byHandPeriodS = 900;
function takeByHand(state, input, act, emit) {
	const known = state.channels[act.channel] !== void 0;
	const channel = channelOf(state, act.channel);
	if (!known) describeTrack(channel.track, byHandPeriodS, 1, null);
	const value = hear(channel, {
		t: input.doneAt,
		late: false,
		quality: "good",
		value: act.value
	}, {
		...state.config,
		calibration: {}
	}, act.channel);
	alarmSample(state, act.channel, channel, value, input.at, emit);
}
makeKilnFold(pair);
/** A pack needs 2 levels, a birth document 4; depth is counted before anything recurses. */
var deepestNesting = 8;
/** Bytes of a message to a JSON value. Never throws. Refuses what JSON.parse lets through: a name twice, names that touch prototypes. */
function parsePayload(bytes) {
	if (bytes.length > 65536) return {
		ok: false,
		reason: "pack-too-large"
	};
	const text = decodeUtf8(bytes);
	if (text === null) return {
		ok: false,
		reason: "bad-utf8"
	};
	const shape = shapeOf(text);
	if (shape.depth > deepestNesting) return {
		ok: false,
		reason: "nested"
	};
	let value;
	try {
		value = JSON.parse(text);
	} catch {
		return {
			ok: false,
			reason: "bad-json"
		};
	}
	const names = countNames(value);
	if (names === null) return {
		ok: false,
		reason: "unsafe-name"
	};
	if (names !== shape.colons) return {
		ok: false,
		reason: "duplicate-name"
	};
	return {
		ok: true,
		value
	};
}
/** Deepest bracket and number of colons outside strings; exact for well-formed JSON, harmless for the rest. */
function shapeOf(text) {
	let depth = 0;
	let open = 0;
	let colons = 0;
	let inString = false;
	for (let i = 0; i < text.length; i++) {
		const code = text.charCodeAt(i);
		if (code === quote) inString = !inString;
		else if (inString) {
			if (code === backslash) i++;
		} else if (code === openBracket || code === openBrace) {
			open++;
			if (open > depth) depth = open;
		} else if (code === closeBracket || code === closeBrace) open--;
		else if (code === colon) colons++;
	}
	return {
		depth,
		colons
	};
}
var quote = 34;
var backslash = 92;
var openBracket = 91;
var closeBracket = 93;
var openBrace = 123;
var closeBrace = 125;
var colon = 58;
var unsafeNames = /* @__PURE__ */ new Set([
	"__proto__",
	"constructor",
	"prototype"
]);
/** Names in all objects of the value; null when one of them is unsafe. */
function countNames(value) {
	if (typeof value !== "object" || value === null) return 0;
	let count = 0;
	if (Array.isArray(value)) {
		for (const item of value) {
			const inner = countNames(item);
			if (inner === null) return null;
			count += inner;
		}
		return count;
	}
	const object = value;
	for (const name in object) {
		if (unsafeNames.has(name)) return null;
		count++;
		const item = object[name];
		if (typeof item !== "object" || item === null) continue;
		const inner = countNames(item);
		if (inner === null) return null;
		count += inner;
	}
	return count;
}
// ../../work/w/calls/server/domain/intake/bare.ts
/** The form of hand-made firmware, `{"outlet":31.2,"wall":352}`, told as the SenML pack that it stands for: °C, now (wire format, rule 10). */
function packOfBare(object) {
	return Object.entries(object).map(([n, v]) => typeof v === "string" ? {
		n,
		u: "Cel",
		vs: v
	} : {
		n,
		u: "Cel",
		v
	});
}
// ../../work/w/calls/server/domain/intake/board.ts
/** A board warms slowly beside its chip; an older temperature is no better than the assumed one. Common practice, no source. */
var oldestBoardMs = 6e5;
/** What a board survives (instrument facts 2.1: cold junction -55 to 127 °C). */
var coldestC = -55;
var hottestC = 127;
/** Whether the channel only carries the temperature of another channel's cold junction. */
var isBoardChannel = ({ birth }, channel) => birth?.boards.includes(channel) ?? false;
/** °C of the cold junction: from the same pack and time, else the last one heard; null where neither is to be had. */
function boardTemperature(node, { channel, record }, memory, pack, receivedMs) {
	const name = node.birth?.channels.get(channel)?.coldJunction ?? null;
	if (name === null) return null;
	for (const other of pack) {
		const { value, timeS } = other.record;
		if (other.channel !== name || timeS !== record.timeS || value === null || value < coldestC || value > hottestC) continue;
		memory.board = {
			c: value,
			atMs: receivedMs
		};
		return value;
	}
	return memory.board !== null && receivedMs - memory.board.atMs <= oldestBoardMs ? memory.board.c : null;
}
// ../../work/w/calls/server/domain/intake/clock.ts
var minuteMs = 6e4;
var windowMinutes = 60;
/**
* So many live packs in a row that agree among themselves within 2 s and lie more than 5 s after the estimate prove it wrong: one broken `up`, or a
* service that started again with a better clock, would otherwise make all that is live look late for an hour. A network that was slow is told apart:
* what it held back comes in a bunch and does not agree. Common practice, no source.
*/
var packsToOverrule = 6;
var agreementMs = 2e3;
var overruledMs = 5e3;
var noEpoch = () => ({
	minutes: [],
	steady: {
		startMs: 0,
		packs: 0
	}
});
/** Takes a live pack into account. */
function feedEpoch(epoch, receivedMs, upS) {
	const minute = Math.floor(receivedMs / minuteMs);
	const startMs = receivedMs - upS * 1e3;
	const last = epoch.minutes.at(-1);
	if (last?.minute === minute) last.leastMs = Math.min(last.leastMs, startMs);
	else epoch.minutes.push({
		minute,
		leastMs: startMs
	});
	const { steady } = epoch;
	if (Math.abs(startMs - steady.startMs) <= agreementMs) steady.packs++;
	else epoch.steady = {
		startMs,
		packs: 1
	};
	if (steady.packs >= packsToOverrule && startMs - (epochMs(epoch) ?? startMs) > overruledMs) epoch.minutes = [{
		minute,
		leastMs: steady.startMs
	}];
	while (epoch.minutes.length > 1 && (epoch.minutes[0]?.minute ?? minute) < minute - windowMinutes) epoch.minutes.shift();
}
/** Null while no live pack came. After a silence of more than an hour the last estimate stands until the next live pack. */
function epochMs(epoch) {
	let least = null;
	for (const { leastMs } of epoch.minutes) if (least === null || leastMs < least) least = leastMs;
	return least;
}
var freshTrust = () => ({
	suspect: false,
	passed: 0,
	newestMs: null,
	newestUpS: null
});
/** Wire format, rule 3. */
var largestDifferenceMs = 5e3;
var furthestAheadMs = 2e3;
/** Packs in a row before a suspect clock is believed again, so that it does not flicker; common practice, no source. */
var passesToTrust = 3;
/**
* Judges the clock of a node by a live pack.
* @param newestMs newest time in the pack, by the node's clock
* @param expectedMs when the pack was composed by its boot's epoch (a pack may be delayed without any fault of the clock); the reception where none is known
*/
function judgeClock(trust, newestMs, expectedMs, receivedMs, upS) {
	const grew = upS !== null && trust.newestUpS !== null && upS > trust.newestUpS;
	const steppedBack = grew && trust.newestMs !== null && newestMs < trust.newestMs;
	if (Math.min(Math.abs(newestMs - expectedMs), Math.abs(newestMs - receivedMs)) > largestDifferenceMs || newestMs - receivedMs > furthestAheadMs || steppedBack) {
		trust.suspect = true;
		trust.passed = 0;
	} else if (trust.suspect) {
		trust.passed++;
		if (trust.passed >= passesToTrust) trust.suspect = false;
	}
	if (trust.newestUpS === null || grew || upS === null) {
		trust.newestMs = newestMs;
		trust.newestUpS = upS;
	}
}
// ../../work/w/calls/server/domain/intake/identity.ts
/** At 5 s a pack: 11 hours. */
var mostPrints = 8192;
/** Of all channels together: at 5 s and eight channels 5.7 hours of each, nearly three times the buffer of a usual node. */
var mostSamples = 32768;
/** However many channels a node has. */
var fewestSamples = 256;
/** Of a node that has few. */
var mostSamplesOfOne = 4096;
/** Packs go missing in few places; a sender that skips about more than this is remembered by its newest ranges. */
var mostRanges = 256;
var nothingSeen = () => ({
	packRanges: [],
	packPrints: /* @__PURE__ */ new Map(),
	samples: /* @__PURE__ */ new Map()
});
function sightPack(seen, seq, print) {
	const known = seen.packPrints.get(seq);
	if (known !== void 0) return known === print ? "again" : "changed";
	return hasPack(seen.packRanges, seq) ? "forgotten" : "new";
}
function rememberPack(seen, seq, print) {
	addPack(seen.packRanges, seq);
	seen.packPrints.set(seq, print);
	dropOldest(seen.packPrints, mostPrints);
}
/** Looks a sample up and remembers it when it is new. The first value stays. */
function sightSample(seen, channel, key, sent) {
	let times = seen.samples.get(channel);
	if (times === void 0) {
		times = /* @__PURE__ */ new Map();
		seen.samples.set(channel, times);
	}
	const known = times.get(key);
	if (known !== void 0) return known === sent ? "again" : "conflict";
	times.set(key, sent);
	dropOldest(times, Math.min(mostSamplesOfOne, Math.max(fewestSamples, Math.floor(mostSamples / seen.samples.size))));
	return "new";
}
/** 'new' is told without remembering: for packs whose number was used before. */
function lookUpSample(seen, channel, key, sent) {
	const known = seen.samples.get(channel)?.get(key);
	return known === void 0 ? "new" : known === sent ? "again" : "conflict";
}
/** A map keeps the order of arrival, so its first entry is the oldest. */
function dropOldest(map, most) {
	if (map.size <= most) return;
	for (const oldest of map.keys()) {
		map.delete(oldest);
		if (map.size <= most) return;
	}
}
function hasPack(ranges, seq) {
	for (let i = ranges.length - 1; i >= 0; i--) {
		const range = ranges[i];
		if (range !== void 0 && seq >= range[0]) return seq <= range[1];
	}
	return false;
}
function addPack(ranges, seq) {
	let i = ranges.length;
	while (i > 0 && (ranges[i - 1]?.[0] ?? 0) > seq) i--;
	const before = ranges[i - 1];
	const after = ranges[i];
	if (before !== void 0 && seq <= before[1]) return;
	const joinsBefore = before !== void 0 && before[1] === seq - 1;
	const joinsAfter = after !== void 0 && after[0] === seq + 1;
	if (joinsBefore && joinsAfter) {
		before[1] = after[1];
		ranges.splice(i, 1);
	} else if (joinsBefore) before[1] = seq;
	else if (joinsAfter) after[0] = seq;
	else ranges.splice(i, 0, [seq, seq]);
	if (ranges.length > mostRanges) ranges.shift();
}
/** FNV-1a, 32 bit: tells a pack that came again from one that changed, nothing more. */
function printOf(bytes) {
	let hash = 2166136261;
	for (const byte of bytes) hash = Math.imul(hash ^ byte, 16777619);
	return hash >>> 0;
}
var mostBoots = 4;
var mostChannels$1 = 64;
var newNode = (node) => ({
	node,
	said: "unknown",
	told: null,
	lastHeardMs: null,
	birth: null,
	boot: null,
	boots: /* @__PURE__ */ new Map(),
	trust: freshTrust(),
	channels: /* @__PURE__ */ new Map(),
	held: [],
	samples: 0,
	duplicates: 0,
	conflicts: 0,
	bootConflicts: 0,
	refused: {},
	remarks: []
});
/** The memory of a boot; the oldest other one goes when there are too many. */
function bootMemory(node, boot) {
	const known = node.boots.get(boot);
	if (known !== void 0) return known;
	const memory = {
		epoch: noEpoch(),
		assumedEpochMs: null,
		firstMs: null,
		seen: nothingSeen()
	};
	node.boots.set(boot, memory);
	for (const old of node.boots.keys()) {
		if (node.boots.size <= mostBoots) break;
		if (old !== node.boot && old !== boot) node.boots.delete(old);
	}
	return memory;
}
/** What is known of a channel, else what a new one starts with; it is remembered by `keepChannel`. */
function channelMemory(node, channel) {
	const known = node.channels.get(channel);
	if (known !== void 0) return known;
	const born = node.birth?.channels.get(channel);
	return {
		periodS: born?.periodS ?? 5,
		lsb: born?.lsb ?? .25,
		told: false,
		recent: null,
		beyondInRow: 0,
		board: null
	};
}
/** False when the node has named more channels than a node can have. */
function keepChannel(node, channel, memory) {
	if (node.channels.size >= mostChannels$1 && !node.channels.has(channel)) return false;
	node.channels.set(channel, memory);
	return true;
}
function remark(node, what) {
	if (!node.remarks.includes(what)) node.remarks.push(what);
}
// ../../work/w/calls/server/domain/intake/announce.ts
/** After a birth document: period and step of each of its channels. */
function tellBirth(node, outcome) {
	for (const [name, born] of node.birth?.channels ?? []) {
		const channel = channelMemory(node, name);
		if (isBoardChannel(node, name) || !keepChannel(node, name, channel)) continue;
		channel.periodS = born.periodS ?? channel.periodS;
		channel.lsb = born.lsb ?? channel.lsb;
		channel.told = true;
		outcome.inputs.push(channelInput(node, name, channel));
	}
}
/** With a pack: what no birth document told, and what the pack's `ut` tells otherwise than was told. */
function tellChannels(node, updates, fresh, outcome) {
	for (const { channel: name } of fresh) {
		const channel = node.channels.get(name);
		if (channel === void 0) continue;
		const periodS = updates.get(name) ?? channel.periodS;
		if (channel.told && periodS === channel.periodS) continue;
		channel.periodS = periodS;
		channel.told = true;
		outcome.inputs.push(channelInput(node, name, channel));
	}
}
function channelInput(node, name, { periodS, lsb }) {
	const told = {
		kind: "channel",
		channel: `${node.node}/${name}`,
		periodS,
		lsb
	};
	const kind = node.birth?.channels.get(name)?.kind;
	if (kind === void 0) return told;
	const { sensor, converter, linearised } = kind;
	return {
		...told,
		probe: {
			sensor,
			converter,
			linearised
		}
	};
}
// ../../work/w/calls/server/domain/channels/thermocouple.ts
/**
* Voltage of a thermocouple, mV, with its reference junction at 0 °C (ITS-90 reference function).
* Outside the function's range the nearest piece is carried on; ask `thermocoupleRange` where that matters.
*/
function thermocoupleMv(letter, tC) {
	return valueAt(letter, pieceAt(letter, tC), tC);
}
/** Where the reference function stands, °C; the lower bound for type B is where it begins to rise (its voltage falls from 0 to about 21 °C). */
function thermocoupleRange(letter) {
	const pieces = referenceFunctions[letter];
	return {
		fromC: letter === "B" ? lowestRisingB : pieces[0]?.fromC ?? 0,
		toC: pieces.at(-1)?.toC ?? 0
	};
}
/** Turning point of type B's reference function, °C (found by setting its derivative to zero). */
var lowestRisingB = 21.020262;
/**
* Temperature of a thermocouple, °C, from its voltage, mV, reference junction at 0 °C: the exact inverse of the reference function
* within 1e-6 K, so that there is neither the step nor the error of the published inverse polynomials.
* The piece is chosen by this summed voltage alone (instrument facts 2.1, point 4). Null outside the function's range.
*/
function thermocoupleC(letter, mv) {
	const { fromC, toC } = thermocoupleRange(letter);
	let low = fromC;
	let high = toC;
	const slackMv = 5e-4;
	const lowMv = thermocoupleMv(letter, low);
	const highMv = thermocoupleMv(letter, high);
	if (!(mv >= lowMv - slackMv && mv <= highMv + slackMv)) return null;
	if (mv <= lowMv) return low;
	if (mv >= highMv) return high;
	let t = low + (high - low) * (mv - lowMv) / (highMv - lowMv);
	for (let round = 0; round < mostRounds; round++) {
		const piece = pieceAt(letter, t);
		const missing = mv - valueAt(letter, piece, t);
		if (missing > 0) low = t;
		else high = t;
		let next = t + missing / slopeAt(letter, piece, t);
		if (!(next > low && next < high)) next = (low + high) / 2;
		if (Math.abs(next - t) < finestK) return next;
		t = next;
	}
	return t;
}
var mostRounds = 80;
var finestK = 1e-8;
/** Sensitivity, mV/K. */
function thermocoupleSlope(letter, tC) {
	return slopeAt(letter, pieceAt(letter, tC), tC);
}
function pieceAt(letter, tC) {
	const pieces = referenceFunctions[letter];
	let last = pieces[0];
	for (const piece of pieces) {
		last = piece;
		if (tC <= piece.toC) break;
	}
	if (last === void 0) throw new RangeError(`no reference function for type ${letter}`);
	return last;
}
function valueAt(letter, { coefficients }, tC) {
	let sum = 0;
	for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * tC + (coefficients[i] ?? 0);
	if (letter !== "K" || tC <= 0) return sum;
	const away = tC - kExponential.centreC;
	return sum + kExponential.amplitudeMv * Math.exp(kExponential.ratePerK2 * away * away);
}
function slopeAt(letter, { coefficients }, tC) {
	let sum = 0;
	for (let i = coefficients.length - 1; i >= 1; i--) sum = sum * tC + i * (coefficients[i] ?? 0);
	if (letter !== "K" || tC <= 0) return sum;
	const { amplitudeMv, ratePerK2, centreC } = kExponential;
	const away = tC - centreC;
	return sum + amplitudeMv * Math.exp(ratePerK2 * away * away) * 2 * ratePerK2 * away;
}
// ../../work/w/calls/server/domain/channels/gate.ts
/** How near the last number makes a sentinel believable; common practice, no source. */
var believable = 5;
/** Numbers that a chip or its driver gives when it has nothing to say (instrument facts 2 and 4, validity gate). */
function sentinelFault(kind, sent, { coldJunctionC, recent }) {
	const backed = recent !== null && recent !== sent && Math.abs(recent - sent) <= believable;
	if (kind.sensor === "ds18b20" && kind.unit === "Cel") {
		if (sent === -127) return "bus";
		if (sent === 85 && !backed) return "not-converted";
	}
	if (kind.converter === "max6675" && kind.unit === "Cel") {
		if (sent >= 1023.75) return "saturated";
		if (sent === 0 && !backed) return "range";
	}
	if (kind.converter === "max31855" && sent === 0 && coldJunctionC === 0 && !backed) return "bus";
	if (kind.sensor === "hx711" && kind.unit === "count" && (sent >= 8388607 || sent <= -8388608)) return "saturated";
	if (kind.converter === "ads1115" && kind.unit === "V" && Math.abs(sent) >= .2559) return "open";
	return null;
}
/** What a probe of this kind can show, in °C (in the channel's own unit where that is no temperature). */
function kindRange(kind) {
	if (kind.unit === "kg") return {
		from: -50,
		to: 500
	};
	if (kind.unit === "/") return {
		from: 0,
		to: 1e6
	};
	if (!isTemperature(kind)) return {
		from: -0xe8d4a51000,
		to: 0xe8d4a51000
	};
	if (isThermocouple(kind.sensor)) {
		const { fromC, toC } = thermocoupleRange(kind.sensor);
		return {
			from: Math.max(fromC, -200),
			to: toC
		};
	}
	if (kind.sensor === "ds18b20") return {
		from: -55,
		to: 125
	};
	if (kind.sensor === "pt100") return {
		from: -200,
		to: 850
	};
	if (kind.sensor === "ntc") return {
		from: -60,
		to: 300
	};
	return {
		from: -200,
		to: 1820
	};
}
/** Whether a channel of this kind tells °C in the end. */
function isTemperature({ unit, sensor }) {
	const behindVoltage = unit === "V" && isThermocouple(sensor);
	return unit === "Cel" || unit === "K" || behindVoltage || unit === "Ohm" && (sensor === "pt100" || sensor === "ntc");
}
/** Bounds of what can be meant in other units; common practice, no source. */
var sensible = {
	K: {
		from: 0,
		to: 2321.15
	},
	Cel: {
		from: -2048,
		to: 2048
	},
	V: {
		from: -10,
		to: 10
	},
	Ohm: {
		from: 0,
		to: 1e8
	},
	kg: {
		from: -1e4,
		to: 1e4
	},
	"/": {
		from: 0,
		to: 1
	}
};
/** Whether the number can be a reading at all, in the unit it was sent in. */
function isSensible({ unit }, sent) {
	const bounds = sensible[unit];
	return bounds === void 0 || sent >= bounds.from && sent <= bounds.to;
}
// ../../work/w/calls/server/domain/channels/resistance.ts
/** IEC 60751, alpha 3.85e-3 (instrument facts 2.7). */
var pt = {
	a: .0039083,
	b: -5.775e-7,
	c: -4183e-15,
	ohmAt0C: 100,
	fromC: -200,
	toC: 850
};
/** Resistance of a Pt100, ohm. */
function pt100Ohm(tC) {
	const { a, b, c, ohmAt0C } = pt;
	const cold = tC < 0 ? c * (tC - 100) * tC * tC * tC : 0;
	return ohmAt0C * (1 + a * tC + b * tC * tC + cold);
}
/** Temperature of a Pt100, °C; null outside -200 to 850 °C. */
function pt100C(ohm) {
	const slackOhm = 1e-4;
	if (!(ohm >= pt100Ohm(pt.fromC) - slackOhm && ohm <= pt100Ohm(pt.toC) + slackOhm)) return null;
	const { a, b, ohmAt0C } = pt;
	let t = (-a + Math.sqrt(a * a - 4 * b * (1 - ohm / ohmAt0C))) / (2 * b);
	for (let round = 0; t < 0 && round < 20; round++) {
		const step = (ohm - pt100Ohm(t)) / pt100Slope(t);
		t += step;
		if (Math.abs(step) < 1e-10) break;
	}
	return t;
}
function pt100Slope(tC) {
	const { a, b, c, ohmAt0C } = pt;
	const cold = tC < 0 ? c * (4 * tC * tC * tC - 300 * tC * tC) : 0;
	return ohmAt0C * (a + 2 * b * tC + cold);
}
var kelvinAt0C = 273.15;
var kelvinAt25C = 298.15;
/** Null for what no resistor can have. */
function ntcC(ohm, ohmAt25C, betaK) {
	if (!(ohm > 0)) return null;
	const inverse = 1 / kelvinAt25C + Math.log(ohm / ohmAt25C) / betaK;
	return inverse > 0 ? 1 / inverse - kelvinAt0C : null;
}
// ../../work/w/calls/server/domain/channels/straight-line.ts
/**
* Straight lines that converter chips assume, mV/K. MAX31855: maker's data sheet for K, E(1000)/1000 of the type for the others
* (T: E(400)/400), instrument facts 2.1. MAX6675: 0.041, type K only, instrument facts 2.2.
*/
var max31855MvPerK = {
	K: .041276,
	J: .057953,
	N: .036256,
	T: .05218,
	E: .076373,
	S: .009587,
	R: .010506
};
var max6675MvPerK = .041;
/** Null where the chip draws no straight line for that letter. */
function straightLineMvPerK(converter, letter) {
	if (converter === "max6675") return letter === "K" ? max6675MvPerK : null;
	if (converter === "max31855") return max31855MvPerK[letter] ?? null;
	return null;
}
/**
* Temperature, °C, behind what a straight-line chip reported (instrument facts 2.1: take the line back to a voltage, add the
* cold junction's voltage, then invert the sum). Null outside the range of the letter.
*/
function straightLineToC(letter, mvPerK, reportedC, coldJunctionC) {
	return thermocoupleC(letter, (reportedC - coldJunctionC) * mvPerK + thermocoupleMv(letter, coldJunctionC));
}
/** Share of a probe's span by which a number may stand outside and still be taken, in doubt (instrument facts 5.4, rule 12). */
var tolerance = .2;
/** From a number as sent to what it means: sentinels, then linearisation, then the range of the probe. Raw numbers stay with the caller. */
function convert(kind, sent, beside) {
	const fault = sentinelFault(kind, sent, beside);
	if (fault !== null) return {
		is: "fault",
		fault
	};
	if (!isSensible(kind, sent)) return { is: "out-of-range" };
	const assumed = beside.coldJunctionC === null && needsColdJunction(kind);
	const value = linear(kind, sent, beside.coldJunctionC ?? 30);
	const { from, to } = kindRange(kind);
	if (value === null) return {
		is: "beyond",
		value: sent > 0 ? to : from
	};
	const slack = tolerance * (to - from);
	if (value < from - slack || value > to + slack) return {
		is: "beyond",
		value: Math.min(Math.max(value, from), to)
	};
	return {
		is: "value",
		value,
		quality: value < from || value > to || assumed && boardMatters(kind, sent, value) ? "suspect" : "good",
		assumed
	};
}
/** True for what can not be told exactly without the temperature of the node's board. */
function needsColdJunction(kind) {
	if (!isThermocouple(kind.sensor)) return false;
	return kind.unit === "V" || !kind.linearised && straightLineMvPerK(kind.converter, kind.sensor) !== null;
}
function linear(kind, sent, boardC) {
	const { sensor, unit } = kind;
	if (unit === "/") return Math.round(sent * 1e9) / 1e3;
	if (unit === "K") return sent - 273.15;
	if (unit === "Ohm" && sensor === "pt100") return pt100C(sent);
	if (unit === "Ohm" && sensor === "ntc") return ntcC(sent, kind.ntc?.ohmAt25C ?? 1e4, kind.ntc?.betaK ?? 3950);
	if (!isThermocouple(sensor)) return sent;
	if (unit === "V") return thermocoupleC(sensor, sent * 1e3 + thermocoupleMv(sensor, boardC));
	const mvPerK = kind.linearised ? null : straightLineMvPerK(kind.converter, sensor);
	return mvPerK === null ? sent : straightLineToC(sensor, mvPerK, sent, boardC);
}
/** A board in the shade of a kiln; common practice, no source. */
var coolestBoardC = 10;
var hottestBoardC = 60;
/** The converter's own error (instrument facts 2.1): less than that needs no warning. */
var tolerableK = 2;
/** Whether not knowing the board's temperature can be worth more than the chip's own error: never for type K behind a straight-line chip. */
function boardMatters(kind, sent, value) {
	const cool = linear(kind, sent, coolestBoardC);
	const hot = linear(kind, sent, hottestBoardC);
	return cool === null || hot === null || Math.abs(cool - value) > tolerableK || Math.abs(hot - value) > tolerableK;
}
/** A step of the converter told in the unit of the value: °C, kg or ppm. */
function stepOfValue({ unit, sensor }, step) {
	if (unit === "/") return step * 1e6;
	if (unit === "V" && isThermocouple(sensor)) return step * 1e3 / thermocoupleSlope(sensor, usualC);
	if (unit === "Ohm" && sensor === "pt100") return step / pt100OhmPerK;
	return unit === "Ohm" && sensor === "ntc" ? .1 : step;
}
/** Where most of a kiln's channels stand; the sensitivity changes little about it. */
var usualC = 300;
/** At 0 °C (IEC 60751). */
var pt100OhmPerK = .39083;
// ../../work/w/calls/server/domain/senml/tables/units.ts
/** Primary units: RFC 8428 section 12.1 and RFC 8798 section 2. */
var primaryUnits = /* @__PURE__ */ new Set([
	...[
		"m",
		"kg",
		"g",
		"s",
		"A",
		"K",
		"cd",
		"mol",
		"Hz",
		"rad",
		"sr",
		"N",
		"Pa",
		"J",
		"W",
		"C",
		"V",
		"F",
		"Ohm",
		"S",
		"Wb",
		"T",
		"H",
		"Cel"
	],
	...[
		"lm",
		"lx",
		"Bq",
		"Gy",
		"Sv",
		"kat",
		"m2",
		"m3",
		"l",
		"m/s",
		"m/s2",
		"m3/s",
		"l/s",
		"W/m2",
		"cd/m2",
		"bit",
		"bit/s",
		"lat",
		"lon"
	],
	...[
		"pH",
		"dB",
		"dBW",
		"Bspl",
		"count",
		"/",
		"%",
		"%RH",
		"%EL",
		"EL",
		"1/s",
		"1/min",
		"beat/min",
		"beats",
		"S/m"
	],
	...[
		"B",
		"VA",
		"VAs",
		"var",
		"vars",
		"J/m",
		"kg/m3",
		"deg"
	]
]);
/** Secondary units: RFC 8798 section 3; primary = value × scale + offset. */
var secondaryUnits = {
	ms: {
		primary: "s",
		scale: 1 / 1e3,
		offset: 0
	},
	min: {
		primary: "s",
		scale: 60,
		offset: 0
	},
	h: {
		primary: "s",
		scale: 3600,
		offset: 0
	},
	MHz: {
		primary: "Hz",
		scale: 1e6,
		offset: 0
	},
	kW: {
		primary: "W",
		scale: 1e3,
		offset: 0
	},
	kVA: {
		primary: "VA",
		scale: 1e3,
		offset: 0
	},
	kvar: {
		primary: "var",
		scale: 1e3,
		offset: 0
	},
	Ah: {
		primary: "C",
		scale: 3600,
		offset: 0
	},
	Wh: {
		primary: "J",
		scale: 3600,
		offset: 0
	},
	kWh: {
		primary: "J",
		scale: 36e5,
		offset: 0
	},
	varh: {
		primary: "vars",
		scale: 3600,
		offset: 0
	},
	kvarh: {
		primary: "vars",
		scale: 36e5,
		offset: 0
	},
	kVAh: {
		primary: "VAs",
		scale: 36e5,
		offset: 0
	},
	"Wh/km": {
		primary: "J/m",
		scale: 3.6,
		offset: 0
	},
	KiB: {
		primary: "B",
		scale: 1024,
		offset: 0
	},
	GB: {
		primary: "B",
		scale: 1e9,
		offset: 0
	},
	"Mbit/s": {
		primary: "bit/s",
		scale: 1e6,
		offset: 0
	},
	"B/s": {
		primary: "bit/s",
		scale: 8,
		offset: 0
	},
	"MB/s": {
		primary: "bit/s",
		scale: 8e6,
		offset: 0
	},
	mV: {
		primary: "V",
		scale: 1 / 1e3,
		offset: 0
	},
	mA: {
		primary: "A",
		scale: 1 / 1e3,
		offset: 0
	},
	dBm: {
		primary: "dBW",
		scale: 1,
		offset: -30
	},
	"ug/m3": {
		primary: "kg/m3",
		scale: 1e-9,
		offset: 0
	},
	"mm/h": {
		primary: "m/s",
		scale: 1 / 36e5,
		offset: 0
	},
	"m/h": {
		primary: "m/s",
		scale: 1 / 3600,
		offset: 0
	},
	ppm: {
		primary: "/",
		scale: 1e-6,
		offset: 0
	},
	"/100": {
		primary: "/",
		scale: 1 / 100,
		offset: 0
	},
	"/1000": {
		primary: "/",
		scale: 1 / 1e3,
		offset: 0
	},
	hPa: {
		primary: "Pa",
		scale: 100,
		offset: 0
	},
	mm: {
		primary: "m",
		scale: 1 / 1e3,
		offset: 0
	},
	cm: {
		primary: "m",
		scale: 1 / 100,
		offset: 0
	},
	km: {
		primary: "m",
		scale: 1e3,
		offset: 0
	},
	"km/h": {
		primary: "m/s",
		scale: 1 / 3.6,
		offset: 0
	}
};
var isSecondaryUnit = (unit) => Object.hasOwn(secondaryUnits, unit);
// ../../work/w/calls/server/domain/senml/units.ts
/**
* A value in a unit of the SenML registries, told in its primary unit.
* @param secondaryAllowed feature bit 4 of the pack's `bver` (RFC 9100, RFC 8798)
*/
function toPrimary(value, unit, secondaryAllowed) {
	if (primaryUnits.has(unit)) return {
		unit,
		value
	};
	if (!isSecondaryUnit(unit)) return "unknown-unit";
	if (!secondaryAllowed) return "unit-version";
	const { primary, scale, offset } = secondaryUnits[unit];
	return {
		unit: primary,
		value: value * scale + offset
	};
}
// ../../work/w/calls/server/domain/intake/birth.ts
var mostChannels = 64;
var channelName = /^[A-Za-z0-9][A-Za-z0-9\-._/]{0,63}$/;
var isObject$2 = (item) => typeof item === "object" && item !== null && !Array.isArray(item);
/** A channel that is wrong is left out and named; a document that is no birth document at all is refused whole. */
function readBirth(document) {
	if (!isObject$2(document) || !Array.isArray(document["channels"]) || document["channels"].length > mostChannels) return {
		ok: false,
		reason: "bad-info"
	};
	const { boot, clock, hw, urn } = document;
	if (boot !== void 0 && !isBoot(boot)) return {
		ok: false,
		reason: "bad-info"
	};
	const channels = /* @__PURE__ */ new Map();
	const problems = [];
	for (const [record, item] of document["channels"].entries()) {
		const read = readChannel(item);
		if (read === null || channels.has(read.name)) problems.push({
			record,
			reason: "bad-channel"
		});
		else channels.set(read.name, read.channel);
	}
	return {
		ok: true,
		birth: {
			hardware: typeof hw === "string" ? plainText(hw) : "",
			boot: boot ?? null,
			clock: clock === "none" || clock === "ntp" || clock === "server" ? clock : "unknown",
			urn: typeof urn === "string" && /^urn:[A-Za-z0-9:\-./_]{1,100}$/.test(urn) ? urn : null,
			channels,
			boards: boardsOf(channels)
		},
		problems
	};
}
function boardsOf(channels) {
	return [...channels.values()].map(({ coldJunction }) => coldJunction).filter((board) => board !== null && !channels.has(board));
}
var isBoot = (boot) => typeof boot === "number" && Number.isInteger(boot) && boot >= 0 && boot <= 4294967295;
function readChannel(item) {
	if (!isObject$2(item)) return null;
	const { n, u = "Cel", sensor = "other", converter = "none", linearised = true, cj, period, lsb, ohm25, beta } = item;
	if (typeof n !== "string" || !channelName.test(n) || typeof u !== "string" || u.length > 16 || typeof linearised !== "boolean") return null;
	const knownSensor = sensors.find((known) => known === sensor);
	const knownConverter = converters.find((known) => known === converter);
	if (knownSensor === void 0 || knownConverter === void 0) return null;
	if (cj !== void 0 && (typeof cj !== "string" || !channelName.test(cj))) return null;
	if (!isWithin(period, .05, 86400) || !isWithin(lsb, 1e-9, 1e3) || !isWithin(ohm25, 1, 1e8) || !isWithin(beta, 100, 1e4)) return null;
	const primary = toPrimary(1, u, true);
	if (typeof primary === "string") return null;
	const kind = {
		unit: primary.unit,
		sensor: knownSensor,
		converter: knownConverter,
		linearised
	};
	if (ohm25 !== void 0 && beta !== void 0) kind.ntc = {
		ohmAt25C: ohm25,
		betaK: beta
	};
	return {
		name: n,
		channel: {
			kind,
			coldJunction: cj ?? null,
			periodS: period ?? null,
			lsb: lsb === void 0 ? null : stepOfValue(kind, lsb * primary.value)
		}
	};
}
var isWithin = (item, from, to) => item === void 0 || typeof item === "number" && item >= from && item <= to;
/** What a page may show without a second thought: printable ASCII, at most 64 of it. */
var plainText = (text) => text.replace(/[^ -~]/g, "").slice(0, 64);
// ../../work/w/calls/server/domain/intake/outcome.ts
var noOutcome = () => ({
	inputs: [],
	refused: [],
	commands: []
});
/** @param record null where the whole message is meant */
function refuse(outcome, node, reason, record) {
	outcome.refused.push({
		node: node.node,
		reason,
		record
	});
	node.refused[reason] = (node.refused[reason] ?? 0) + 1;
}
// ../../work/w/calls/server/domain/intake/documents.ts
var states = [
	"init",
	"ready",
	"sleeping",
	"disconnected",
	"lost"
];
/** `state`: what a node says of itself, or its will says of it. */
function takeState(node, document, atMs, retained, outcome) {
	const { s, boot } = typeof document === "object" && document !== null ? document : {};
	const said = states.find((known) => known === s);
	if (said === void 0 || boot !== void 0 && !isBoot(boot)) {
		refuse(outcome, node, "bad-state", null);
		return;
	}
	const gone = said === "lost" || said === "disconnected";
	if (gone && boot !== void 0 && node.boot !== null && boot !== node.boot) return;
	node.said = said;
	if (!retained && !gone) node.lastHeardMs = atMs;
	const is = gone ? "lost" : said === "sleeping" ? node.told : "up";
	if (is === null || is === node.told) return;
	node.told = is;
	outcome.inputs.push({
		kind: "node",
		node: node.node,
		is
	});
}
/** `info`: the birth document. */
function takeInfo(node, document, atMs, retained, outcome) {
	const read = readBirth(document);
	if (!read.ok) {
		refuse(outcome, node, read.reason, null);
		return;
	}
	for (const { record, reason } of read.problems) refuse(outcome, node, reason, record);
	node.birth = read.birth;
	if (!retained) node.lastHeardMs = atMs;
	tellBirth(node, outcome);
}
// ../../work/w/calls/server/domain/intake/freeze.ts
/** The state as JSON in UTF-8; a Map becomes `{"map":[[key,value],...]}`, in its order. */
function freezeState(state) {
	return encodeUtf8(JSON.stringify(state, (_, value) => value instanceof Map ? { map: [...value] } : value));
}
/** @throws RangeError on bytes that `freezeState` did not make: a checkpoint is ours, so this is damage */
function thawState(bytes) {
	const text = decodeUtf8(bytes);
	if (text === null) throw new RangeError("frozen intake state is not UTF-8");
	return JSON.parse(text, (_, value) => isFrozenMap(value) ? new Map(value.map) : value);
}
var isFrozenMap = (value) => typeof value === "object" && value !== null && "map" in value && Array.isArray(value.map);
// ../../work/w/calls/server/domain/senml/resolve.ts
/** Wire format, rule 9. */
var mostRecords = 512;
/** RFC 8428 gives 10; RFC 9100 makes the number a set of features, of which bit 4 (secondary units) is understood. */
var plainVersion = 10;
var versionWithSecondaryUnits = 26;
/** Works the base fields of a pack into its records. A record that is wrong in itself is left out and named in `problems`. */
function resolvePack(pack) {
	if (pack.length === 0) return {
		ok: false,
		reason: "empty-pack"
	};
	if (pack.length > mostRecords) return {
		ok: false,
		reason: "too-many-records"
	};
	const base = {
		name: null,
		timeS: 0,
		unit: null,
		value: 0
	};
	const records = [];
	const problems = [];
	let version = null;
	for (const [index, item] of pack.entries()) {
		if (!isObject$1(item)) {
			problems.push({
				index,
				reason: "not-a-record"
			});
			continue;
		}
		for (const label in item) if (label.endsWith("_")) return {
			ok: false,
			reason: "unknown-label"
		};
		if (item["bver"] !== void 0) {
			if (!isKnownVersion(item["bver"]) || version !== null && version !== item["bver"]) return {
				ok: false,
				reason: "unknown-version"
			};
			version = item["bver"];
		}
		if (!takeBase(base, item)) return {
			ok: false,
			reason: "bad-base"
		};
		const record = readRecord(item, base, index);
		if (typeof record === "string") problems.push({
			index,
			reason: record
		});
		else if (record !== null) records.push(record);
	}
	return {
		ok: true,
		records,
		problems,
		secondaryUnits: version === versionWithSecondaryUnits
	};
}
var isObject$1 = (item) => typeof item === "object" && item !== null && !Array.isArray(item);
var isNumber = (item) => typeof item === "number" && Number.isFinite(item);
var isKnownVersion = (version) => Number.isInteger(version) && (version === versionWithSecondaryUnits || version >= 1 && version <= plainVersion);
/** False when a base field has the wrong type: then nothing after it can be trusted. */
function takeBase(base, { bn, bt, bu, bv, bs }) {
	if (bn !== void 0) {
		if (typeof bn !== "string") return false;
		base.name = bn;
	}
	if (bt !== void 0) {
		if (!isNumber(bt)) return false;
		base.timeS = bt;
	}
	if (bu !== void 0) {
		if (typeof bu !== "string") return false;
		base.unit = bu;
	}
	if (bv !== void 0) {
		if (!isNumber(bv)) return false;
		base.value = bv;
	}
	return bs === void 0 || isNumber(bs);
}
var valueLabels = [
	"v",
	"vs",
	"vb",
	"vd"
];
var baseLabels = /* @__PURE__ */ new Set([
	"bn",
	"bt",
	"bu",
	"bv",
	"bs",
	"bver"
]);
/** RFC 8428, 4.5.1. */
var legalName = /^[A-Za-z0-9][A-Za-z0-9\-:./_]*$/;
var longestName = 256;
/** Null for a record that only sets base fields. */
function readRecord(item, base, index) {
	let onlyBase = true;
	for (const label in item) {
		const field = item[label];
		if (typeof field === "object" && field !== null) return "nested";
		onlyBase &&= baseLabels.has(label);
	}
	if (onlyBase) return null;
	const { n, u, t, ut, v, vs, s } = item;
	if (n !== void 0 && typeof n !== "string") return "bad-name";
	const name = (base.name ?? "") + (n ?? "");
	if (name.length > longestName || !legalName.test(name)) return "bad-name";
	if (u !== void 0 && typeof u !== "string") return "bad-field";
	if (t !== void 0 && !isNumber(t) || ut !== void 0 && !isNumber(ut) || s !== void 0 && !isNumber(s)) return "bad-number";
	let given = 0;
	for (const label of valueLabels) if (item[label] !== void 0) given++;
	if (given > 1) return "two-values";
	if (given === 0) return s === void 0 ? "no-value" : "no-number";
	if (v !== void 0 && !isNumber(v)) return "bad-number";
	if (vs !== void 0 && typeof vs !== "string") return "bad-field";
	if (v === void 0 && vs === void 0) return "no-number";
	return {
		index,
		name,
		based: base.name !== null,
		unit: u ?? base.unit,
		timeS: base.timeS + (t ?? 0),
		updateS: ut ?? null,
		value: v === void 0 ? null : v + base.value + 0,
		text: vs ?? null
	};
}
// ../../work/w/calls/server/domain/intake/times.ts
/** RFC 8428, 4.5.3: below this a time is relative to the sending of the pack. */
var relativeBelowS = 268435456;
/** Wire format, rule 9: 2020 to 2100. */
var earliestMs = Date.UTC(2020, 0, 1);
var latestMs = Date.UTC(2100, 0, 1);
/** Relative times that no buffer and no clock explains, s; common practice, no source. */
var oldestRelativeS = -2678400;
var furthestRelativeS = 86400;
/** Wire format, rule 3, taken for relative times as well: nothing is measured after its pack was composed. */
var aheadToleranceS = 2;
function packTimes(pack) {
	let newestS = -Infinity;
	let aheadS = 0;
	for (const { record } of pack) {
		const { timeS } = record;
		if (timeS >= relativeBelowS) newestS = isYear(timeS * 1e3) ? Math.max(newestS, timeS) : newestS;
		else if (timeS > aheadToleranceS && timeS <= furthestRelativeS) aheadS = Math.max(aheadS, timeS);
	}
	return {
		newestAbsoluteMs: newestS === -Infinity ? null : toMs(newestS),
		aheadS
	};
}
/** Null for a time that can not be meant. Relative times ahead of the pack are taken against the newest of them. */
function recordTime(timeS, { newestAbsoluteMs, aheadS }) {
	if (timeS >= relativeBelowS) {
		const absoluteMs = toMs(timeS);
		if (!isYear(absoluteMs) || newestAbsoluteMs === null) return null;
		return {
			relativeS: (absoluteMs - newestAbsoluteMs) / 1e3,
			absoluteMs
		};
	}
	if (timeS < oldestRelativeS || timeS > furthestRelativeS) return null;
	return {
		relativeS: timeS - aheadS,
		absoluteMs: null
	};
}
var isYear = (ms) => ms >= earliestMs && ms < latestMs;
/** Wire format, rule 1: to 1 ms. */
var toMs = (timeS) => Math.round(timeS * 1e3);
// ../../work/w/calls/server/domain/intake/accept.ts
/** Takes the records of a pack that this service can use; refuses the others one by one. Null when the pack's identity is broken. */
function acceptRecords(node, pack, receivedMs, outcome) {
	const identity = {
		boot: null,
		seq: null,
		upS: null
	};
	const named = [];
	for (const record of pack.records) {
		const channel = localName(node, record);
		if (channel === null) refuse(outcome, node, "foreign-name", record.index);
		else if (!channelName.test(channel)) refuse(outcome, node, "unknown-name", record.index);
		else if (channel === "boot" || channel === "seq" || channel === "up") {
			if (!takeIdentity(identity, channel, record.value)) {
				refuse(outcome, node, "bad-identity", null);
				return null;
			}
		} else named.push({
			channel,
			record
		});
	}
	const accepted = {
		identity,
		times: packTimes(named),
		readings: [],
		updates: /* @__PURE__ */ new Map()
	};
	for (const one of named) takeRecord(one, {
		node,
		named,
		secondaryUnits: pack.secondaryUnits,
		receivedMs
	}, accepted, outcome);
	return accepted;
}
function takeRecord(one, around, accepted, outcome) {
	const { node } = around;
	const { index, timeS, updateS, value: number } = one.record;
	const time = recordTime(timeS, accepted.times);
	if (time === null) return refuse(outcome, node, "bad-time", index);
	const channel = channelMemory(node, one.channel);
	const meant = meaningOf(one, channel, around);
	if (typeof meant === "string") return refuse(outcome, node, meant, index);
	if (!keepChannel(node, one.channel, channel)) return refuse(outcome, node, "too-many-channels", index);
	if (meant.refused) refuse(outcome, node, "out-of-range", index);
	if (updateS !== null && updateS > 0) accepted.updates.set(one.channel, updateS);
	if (isBoardChannel(node, one.channel)) return;
	const { relativeS, absoluteMs } = time;
	const { quality, raw, value, coldJunctionC } = meant;
	accepted.readings.push({
		record: index,
		channel: one.channel,
		relativeS,
		absoluteMs,
		quality,
		raw,
		value,
		coldJunctionC,
		sent: number ?? quality
	});
}
/** The channel's name at its node; null for a name that belongs to another. */
function localName(node, { name, based }) {
	const own = `${node.node}/`;
	if (name.startsWith(own)) return name.slice(own.length);
	const urn = node.birth?.urn ?? null;
	if (urn !== null && name.startsWith(urn)) return name.slice(urn.length).replace(/^[:/_]/, "");
	return based ? null : name;
}
var longestUpS = 632448e3;
function takeIdentity(identity, label, value) {
	if (value === null) return false;
	if (label === "up") {
		identity.upS = value;
		return value >= 0 && value <= longestUpS;
	}
	identity[label] = value;
	return isBoot(value);
}
/** So many numbers in a row that the probe can not show are no glitch any more; common practice, no source. */
var beyondIsFault = 3;
/** A number older than this says nothing about a sentinel; common practice, no source. */
var recentMs = 6e4;
function meaningOf(one, channel, { node, named, secondaryUnits, receivedMs }) {
	if (one.record.value === null) return meaningOfText(one.record.text ?? "");
	const sent = inChannelUnit(one.record, node.birth?.channels.get(one.channel)?.kind ?? null, secondaryUnits);
	if (typeof sent === "string") return sent;
	const coldJunctionC = boardTemperature(node, one, channel, named, receivedMs);
	const recent = channel.recent !== null && receivedMs - channel.recent.atMs <= recentMs ? channel.recent.sent : null;
	const converted = convert(sent.kind, sent.value, {
		coldJunctionC,
		recent
	});
	if (converted.is === "fault") return faulty(`fault:${converted.fault}`, false);
	if (converted.is === "out-of-range") return faulty("fault:range", true);
	if (converted.is === "beyond") {
		channel.beyondInRow++;
		if (channel.beyondInRow >= beyondIsFault) return faulty("fault:range", false);
		return {
			quality: "suspect",
			raw: sent.value,
			value: converted.value,
			coldJunctionC,
			refused: false
		};
	}
	channel.beyondInRow = 0;
	channel.recent = {
		sent: sent.value,
		atMs: receivedMs
	};
	if (converted.assumed) remark(node, "cold-junction-assumed");
	return {
		quality: converted.quality,
		raw: sent.value,
		value: converted.value,
		coldJunctionC,
		refused: false
	};
}
/** Of `vs`, only faults are read: `fault:open` and its like. */
function meaningOfText(text) {
	const word = faultWords.find((known) => text === `fault:${known}`);
	if (word !== void 0) return faulty(`fault:${word}`, false);
	return text.startsWith("fault:") ? "unknown-fault" : "no-number";
}
var faulty = (quality, refused) => ({
	quality,
	raw: null,
	value: null,
	coldJunctionC: null,
	refused
});
/** The number in the unit that the birth document promised; without one the pack's own unit stands. */
function inChannelUnit({ value, unit }, kind, secondaryUnits) {
	const number = value ?? 0;
	if (unit === null) return kind === null ? "no-unit" : {
		value: number,
		kind
	};
	const primary = toPrimary(number, unit, secondaryUnits);
	if (typeof primary === "string") return primary;
	if (kind === null) return {
		value: primary.value,
		kind: plainKind(primary.unit)
	};
	return primary.unit === kind.unit ? {
		value: primary.value,
		kind
	} : "wrong-unit";
}
// ../../work/w/calls/server/domain/intake/place.ts
/** Readings that are held back for want of a time, at most, per node. */
var mostHeld = 2e4;
/** No more of an old buffer is coming; common practice, no source. */
var quietMs = 3e4;
/** How long a boot's first live pack is waited for; common practice, no source. */
var patienceMs = 12e4;
/** Where a boot's seconds began: by its live packs, else as assumed. */
var bootEpochMs = (boot) => epochMs(boot.epoch) ?? boot.assumedEpochMs;
/** Sends one reading on with its time. The time of a sample is given once, here. */
function deliver(node, reading, t, late, unsure, outcome) {
	const { quality, raw, value, coldJunctionC } = reading;
	if (unsure) remark(node, "time-unsure");
	const told = {
		kind: "sample",
		channel: `${node.node}/${reading.channel}`,
		t,
		late,
		raw,
		value,
		quality: unsure && quality === "good" ? "suspect" : quality
	};
	outcome.inputs.push(coldJunctionC === null ? told : {
		...told,
		coldJunctionC
	});
	node.samples++;
}
/** Keeps a reading until its boot can be placed. */
function hold(node, boot, upS, reading, atMs) {
	let held = node.held.find((other) => other.boot === boot);
	if (held === void 0) {
		held = {
			boot,
			sinceMs: atMs,
			lastMs: atMs,
			readings: []
		};
		node.held.push(held);
	}
	held.lastMs = atMs;
	held.readings.push({
		upS,
		reading
	});
}
/** Places what was held and can be placed now (wire format, rule 4). Called with every message of the site. */
function releaseHeld(node, atMs, outcome) {
	if (node.held.length === 0) return;
	const crowded = node.held.reduce((sum, { readings }) => sum + readings.length, 0) > mostHeld;
	node.held = node.held.filter((held) => {
		const boot = bootMemory(node, held.boot);
		const known = epochMs(boot.epoch);
		if (known === null) {
			const assumed = assumedEpochMs(node, held, atMs, crowded);
			if (assumed === null) return true;
			boot.assumedEpochMs = assumed;
		}
		const beganMs = known ?? boot.assumedEpochMs ?? atMs;
		for (const { upS, reading } of held.readings) deliver(node, reading, Math.min(Math.round(beganMs + (upS + reading.relativeS) * 1e3), atMs), true, known === null, outcome);
		return false;
	});
}
/** So that the newest of them lies just before the new boot's first sample; where no boot was heard live, at their arrival. */
function assumedEpochMs(node, { boot, sinceMs, lastMs, readings }, atMs, crowded) {
	const newestS = readings.reduce((newest, { upS, reading }) => Math.max(newest, upS + reading.relativeS), -Infinity);
	const nextMs = node.boot === null || node.boot === boot ? null : node.boots.get(node.boot)?.firstMs ?? null;
	if (nextMs !== null && (crowded || atMs - lastMs > quietMs)) return nextMs - 1 - newestS * 1e3;
	if (crowded || atMs - sinceMs > patienceMs) return lastMs - newestS * 1e3;
	return null;
}
// ../../work/w/calls/server/domain/intake/pack.ts
/** One SenML pack: resolve, accept, tell duplicates and conflicts, judge the clock, place in time, deliver. */
function takePack(node, pack, arrival, outcome) {
	const resolved = resolvePack(pack);
	if (!resolved.ok) {
		refuse(outcome, node, resolved.reason, null);
		return;
	}
	for (const { index, reason } of resolved.problems) refuse(outcome, node, reason, index);
	const accepted = acceptRecords(node, resolved, arrival.atMs, outcome);
	if (accepted === null || accepted.readings.length === 0 && accepted.identity.boot === null) return;
	const fresh = tellApart(node, accepted, arrival, outcome);
	if (fresh === null) return;
	if (arrival.live) hearLive(node, accepted, arrival.atMs, outcome);
	tellChannels(node, accepted.updates, fresh, outcome);
	for (const reading of fresh) placeReading(node, accepted.identity, reading, arrival, outcome);
}
/** The readings that were not heard before; null for a pack that brings nothing but what was heard, or contradicts it. */
function tellApart(node, { identity, readings }, { live, payload }, outcome) {
	const { boot, seq, upS } = identity;
	if (boot === null) {
		remark(node, "unsequenced");
		return readings;
	}
	const { seen } = bootMemory(node, boot);
	const print = printOf(payload);
	const sighting = seq === null ? "new" : sightPack(seen, seq, print);
	if (sighting === "again" || sighting === "forgotten" && !live) {
		node.duplicates += readings.length;
		return null;
	}
	const fresh = [];
	let conflicts = 0;
	for (const reading of readings) {
		const key = reading.absoluteMs ?? (upS === null ? null : Math.round((upS + reading.relativeS) * 1e3));
		const found = key === null ? "new" : sighting === "new" ? sightSample(seen, reading.channel, key, reading.sent) : lookUpSample(seen, reading.channel, key, reading.sent);
		if (found === "again") node.duplicates++;
		else if (found === "new" && sighting === "new") fresh.push(reading);
		else {
			conflicts++;
			refuse(outcome, node, "conflict", reading.record);
		}
	}
	if (seq !== null && sighting === "new") rememberPack(seen, seq, print);
	if (conflicts > 0) countConflict(node, outcome);
	return sighting === "new" && (fresh.length > 0 || readings.length === 0) ? fresh : null;
}
/** Wire format, rule 1. Asked again after twice as many each time, so that a node that does not listen is not shouted at. */
var conflictsToAsk = 3;
function countConflict(node, outcome) {
	node.conflicts++;
	node.bootConflicts++;
	const asks = node.bootConflicts / conflictsToAsk;
	if (Number.isInteger(Math.log2(asks))) outcome.commands.push({
		node: node.node,
		do: "rebirth",
		why: "conflicts"
	});
}
/** What a live pack tells beside its samples: that the node is there, which boot runs, how its clock stands. */
function hearLive(node, { identity, times }, atMs, outcome) {
	const { boot, upS } = identity;
	node.lastHeardMs = atMs;
	if (node.told !== "up") {
		node.told = "up";
		if (node.said !== "unknown") node.said = "ready";
		outcome.inputs.push({
			kind: "node",
			node: node.node,
			is: "up"
		});
	}
	if (boot !== null) {
		const memory = bootMemory(node, boot);
		if (boot !== node.boot && epochMs(memory.epoch) === null) startBoot(node, boot);
		if (upS !== null) feedEpoch(memory.epoch, atMs, upS);
	}
	const epoch = boot === null || upS === null ? null : epochMs(bootMemory(node, boot).epoch);
	const composedMs = epoch === null || upS === null ? atMs : epoch + upS * 1e3;
	if (times.newestAbsoluteMs !== null) judgeClock(node.trust, times.newestAbsoluteMs, composedMs, atMs, upS);
	else if (times.aheadS > 0) {
		remark(node, "time-ahead");
		judgeClock(node.trust, composedMs + times.aheadS * 1e3, composedMs, atMs, upS);
	}
}
function startBoot(node, boot) {
	node.boot = boot;
	node.bootConflicts = 0;
	node.trust.newestMs = null;
	node.trust.newestUpS = null;
}
/** Wire format, rule 5. */
var lateMs = 15e3;
var latePeriods = 3;
/** Wire format, rule 3: further ahead than this no clock is believed. */
var aheadMs = 2e3;
function placeReading(node, { boot, upS }, reading, { atMs, live }, outcome) {
	const memory = boot === null ? null : bootMemory(node, boot);
	const beganMs = memory === null || upS === null ? null : bootEpochMs(memory);
	let t;
	let unsure = false;
	if (reading.absoluteMs !== null && !node.trust.suspect && reading.absoluteMs <= atMs + aheadMs) t = reading.absoluteMs;
	else if (boot !== null && upS !== null) {
		if (memory === null || beganMs === null) {
			hold(node, boot, upS, reading, atMs);
			return;
		}
		unsure = memory.epoch.minutes.length === 0;
		t = beganMs + (upS + reading.relativeS) * 1e3;
	} else {
		unsure = !live;
		t = atMs + reading.relativeS * 1e3;
	}
	t = Math.min(Math.round(t), atMs);
	const periodS = node.channels.get(reading.channel)?.periodS ?? 0;
	const late = !live || atMs - t > Math.max(lateMs, latePeriods * periodS * 1e3);
	deliver(node, reading, t, late, unsure, outcome);
	if (memory !== null && !unsure && (memory.firstMs === null || t < memory.firstMs)) memory.firstMs = t;
}
// ../../work/w/calls/server/domain/intake/topic.ts
var kinds = [
	"state",
	"info",
	"readings",
	"backlog",
	"ack",
	"cmd"
];
var levelName = /^[a-z][a-z0-9-]{0,31}$/;
var contractVersion = "1";
/** Null for what the service itself says, which is no reading. */
function readTopic(topic, root, site) {
	const levels = topic.length > 256 ? [] : topic.split("/");
	const [first, version, siteLevel, node, kindLevel] = levels;
	if (first !== root || version === void 0 || siteLevel === void 0 || node === void 0 || kindLevel === void 0) return "bad-topic";
	if (version !== contractVersion) return "unknown-contract";
	if (!levelName.test(siteLevel) || !levelName.test(node)) return "bad-topic";
	if (siteLevel !== site) return "other-site";
	if (node === "server") return null;
	if (levels.length !== 5) return "bad-topic";
	const kind = kinds.find((known) => known === kindLevel);
	return kind === void 0 ? "unknown-kind" : {
		site: siteLevel,
		node,
		kind
	};
}
// ../../work/w/calls/server/domain/intake/view.ts
/** What the page shows of the nodes, in order of first hearing. */
function viewNodes(state) {
	return [...state.nodes.values()].map((node) => ({
		node: node.node,
		state: node.said,
		lastHeard: node.lastHeardMs,
		boot: node.boot ?? node.birth?.boot ?? null,
		clock: clockOf(node),
		hardware: node.birth?.hardware ?? "",
		channels: [...node.channels].filter(([, { told }]) => told).map(([name]) => `${node.node}/${name}`),
		samples: node.samples,
		duplicates: node.duplicates,
		conflicts: node.conflicts,
		refused: { ...node.refused },
		remarks: [...node.remarks]
	}));
}
function clockOf({ trust, birth }) {
	return trust.suspect ? "suspect" : birth?.clock ?? "unknown";
}
// ../../work/w/calls/server/domain/intake/fold.ts
var mostNodes = 64;
/** From messages to samples, one fold per site (wire format; the state is changed in place). */
var intakeFold = {
	version: 1,
	start: ({ root, site }) => ({
		root,
		site,
		nodes: /* @__PURE__ */ new Map(),
		clockSuspectTold: false
	}),
	step(state, message) {
		const outcome = noOutcome();
		takeMessage(state, message, outcome);
		for (const node of state.nodes.values()) releaseHeld(node, message.at, outcome);
		tellClocks(state, outcome);
		return {
			state,
			...outcome
		};
	},
	view: viewNodes,
	freeze: freezeState,
	thaw: thawState
};
function takeMessage(state, message, outcome) {
	const topic = readTopic(message.topic, state.root, state.site);
	if (topic === null) return;
	if (typeof topic === "string") {
		outcome.refused.push({
			node: null,
			reason: topic,
			record: null
		});
		return;
	}
	if (topic.kind === "cmd") return;
	const node = nodeMemory(state, topic);
	if (node === null) {
		outcome.refused.push({
			node: null,
			reason: "too-many-nodes",
			record: null
		});
		return;
	}
	if (message.payload.length === 0 && (topic.kind === "state" || topic.kind === "info")) return;
	const parsed = parsePayload(message.payload);
	if (!parsed.ok) {
		refuse(outcome, node, parsed.reason, null);
		return;
	}
	takeDocument(node, topic, parsed.value, message, outcome);
}
function takeDocument(node, topic, document, message, outcome) {
	const { at, payload, retained } = message;
	if (topic.kind === "state") takeState(node, document, at, retained, outcome);
	else if (topic.kind === "info") takeInfo(node, document, at, retained, outcome);
	else if (topic.kind === "ack") node.lastHeardMs = at;
	else if (retained) remark(node, "retained-reading");
	else if (Array.isArray(document)) takePack(node, document, {
		atMs: at,
		live: topic.kind === "readings",
		payload
	}, outcome);
	else if (topic.kind === "readings" && isObject(document)) takePack(node, packOfBare(document), {
		atMs: at,
		live: true,
		payload
	}, outcome);
	else refuse(outcome, node, "not-a-pack", null);
}
var isObject = (item) => typeof item === "object" && item !== null && !Array.isArray(item);
function nodeMemory(state, { site, node }) {
	const known = state.nodes.get(node);
	if (known !== void 0) return known;
	if (state.nodes.size >= mostNodes) return null;
	const fresh = newNode(`${site}/${node}`);
	state.nodes.set(node, fresh);
	return fresh;
}
/** Once, as it turns: some node's clock is suspect, or none any more. */
function tellClocks(state, outcome) {
	let suspect = false;
	for (const { trust } of state.nodes.values()) suspect ||= trust.suspect;
	if (suspect === state.clockSuspectTold) return;
	state.clockSuspectTold = suspect;
	outcome.inputs.push({
		kind: "health",
		code: "clock-suspect",
		on: suspect
	});
}
// ../../work/w/calls/server/contract/fold.ts
var defaultLimits = {
	smokeStartC: 80,
	smokeStopC: 150,
	condenserNoticeC: 45,
	condenserWarningC: 55,
	condenserOnDelayS: 240,
	condenserOffDelayS: 45,
	condenserDeadBandK: 2,
	fireLowC: 350,
	fireOutC: 200,
	openHottestC: 45,
	openMinimumWaitH: 10,
	coCautionPpm: 35,
	coLeavePpm: 200
};
// ../../work/w/calls/server/contract/kiln-defaults.ts
/** The kiln that is assumed where nobody said anything: a 200-litre drum under earth whose small fire is kept to the end. */
function defaultKilnConfig(kiln = "kiln-1") {
	return {
		kiln,
		name: "",
		volumeL: 200,
		cover: "earth",
		way: "kept",
		charge: {},
		roles: {},
		calibration: {},
		limits: { ...defaultLimits },
		worth: {
			good: 1,
			tarry: -2,
			watery: -.25
		},
		altitudeM: 0,
		seed: 1
	};
}
// ../../work/w/calls/server/runtime/base64.ts
var toBase64 = (bytes) => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("base64");
var fromBase64 = (text) => new Uint8Array(Buffer.from(text, "base64"));
// ../../work/w/calls/server/runtime/entry.ts
var encoder$1 = new TextEncoder();
var decoder = new TextDecoder();
function messageEntry({ seq, at }, message) {
	return {
		seq,
		at,
		kind: "message",
		kiln: null,
		topic: message.topic,
		payload: message.payload,
		retained: message.retained
	};
}
function actEntry(stamp, kiln, act) {
	return documentEntry(stamp, "act", kiln, act);
}
function configEntry(stamp, config) {
	return documentEntry(stamp, "config", config.kiln, config);
}
function healthEntry(stamp, health) {
	return documentEntry(stamp, "health", null, health);
}
function documentEntry({ seq, at }, kind, kiln, document) {
	return {
		seq,
		at,
		kind,
		kiln,
		topic: "",
		payload: encoder$1.encode(JSON.stringify(document)),
		retained: false
	};
}
/** The JSON document of an act, config or health entry, as it was written by this module. */
function documentOf(entry) {
	return JSON.parse(decoder.decode(entry.payload));
}
// ../../work/w/calls/server/runtime/origin.ts
/** One text for the frozen intake state and what a new session is told first; it travels in the header of an export. */
function freezeOrigin(intake, known) {
	return new TextEncoder().encode(JSON.stringify({
		intake: toBase64(intake),
		known: [...known]
	}));
}
function thawOrigin(bytes) {
	const { intake, known } = JSON.parse(new TextDecoder().decode(bytes));
	return {
		intake: fromBase64(intake),
		known: new Map(known)
	};
}
/** Both folds' versions in one number: an origin of other folds cannot be continued. */
function originVersion(folds) {
	return folds.intake.version * 1e3 + folds.kiln.version;
}
// ../../work/w/calls/server/runtime/roles.ts
/** The role that a channel's own name gives it, if any. */
function roleByName(channel) {
	const name = channel.slice(channel.lastIndexOf("/") + 1);
	return roles.find((role) => role === name) ?? null;
}
/** The role of a channel at a kiln as set, null where none was set. */
function roleAt(config, channel) {
	return config.roles[channel] ?? null;
}
/**
* A channel named after a role takes that role by itself: at the first kiln where no other channel has it.
* Null where the name is no role or the role is taken everywhere.
*/
function claim(sessions, channel) {
	const role = roleByName(channel);
	if (role === null) return null;
	for (const session of sessions) if (!Object.values(session.config.roles).includes(role)) return {
		session,
		role
	};
	return null;
}
/**
* The channel that took a role by its own name and has fallen silent since: it must give way to one of that name that speaks.
* Null where the holder speaks, or was given the role by a person.
*/
function silentHolder(config, role, isSilent) {
	const holder = Object.keys(config.roles).find((channel) => config.roles[channel] === role);
	return holder !== void 0 && roleByName(holder) === role && isSilent(holder) ? holder : null;
}
// ../../work/w/calls/server/runtime/throttle.ts
var startPace = () => ({
	estimateAt: null,
	forecastAt: {}
});
var estimateEveryMs = 6e4;
var forecastEveryMs = 295e3;
/** Whether an output is told now; moves `pace` on. A call that changed lets the next forecasts through at once. */
function lets(pace, output) {
	switch (output.kind) {
		case "estimate":
			if (pace.estimateAt !== null && output.at - pace.estimateAt < estimateEveryMs) return false;
			pace.estimateAt = output.at;
			return true;
		case "forecast": {
			const last = pace.forecastAt[output.call];
			if (last !== void 0 && output.at - last < forecastEveryMs) return false;
			pace.forecastAt[output.call] = output.at;
			return true;
		}
		case "call":
			pace.forecastAt = {};
			return true;
		default: return true;
	}
}
// ../../work/w/calls/server/runtime/session.ts
function remember(known, input) {
	if (input.kind === "channel") known.set(`channel ${input.channel}`, input);
	else if (input.kind === "node") known.set(`node ${input.node}`, input);
	else if (input.kind === "health") {
		if (input.on) known.set(`health ${input.code}`, input);
		else known.delete(`health ${input.code}`);
	}
}
/** `kiln-1-20260301T073000` from the origin's own time: the same in every replay. */
function sessionId(kiln, at, seq) {
	return `${kiln}-${new Date(at).toISOString().slice(0, 19).replace(/[-:]/g, "")}-${seq}`;
}
function makeSession(state, config, origin) {
	return {
		id: sessionId(config.kiln, origin.at, origin.seq),
		state,
		config,
		origin,
		openedAt: null,
		triedOpen: false,
		phase: "idle",
		pace: startPace(),
		cause: origin.seq,
		nextN: 0,
		samples: 0
	};
}
/** Ids of acts that were taken, newest last; enough of them to answer a tablet that sends again after a night offline. */
function rememberAct(ids, id) {
	ids.add(id);
	if (ids.size > 2e3) for (const oldest of ids) return void ids.delete(oldest);
}
// ../../work/w/calls/server/runtime/driver.ts
var tick = { kind: "tick" };
var secondMs = 1e3;
var hourMs = 36e5;
/** A channel that a fresh session has not heard for so long is silent (wire format 7: lost after a minute), ms. */
var silentMs = 12e4;
var wholeSecond = (at) => Math.floor(at / secondMs) * secondMs;
/**
* The one driver of both folds: live, recovery and replay differ only in where entries come from.
* Seconds tick between the entries, never at a second that an earlier entry has passed and never after the last.
*/
var Driver = class Driver {
	state;
	/** Hears every sample as the intake understood it, whether or not a kiln has its channel. */
	ear = null;
	folds;
	effects = [];
	constructor(folds, state) {
		this.folds = folds;
		this.state = state;
	}
	/** A new site, or a file without a beginning of its own: fresh folds from `at` on. */
	static fresh(folds, setup) {
		const driver = new Driver(folds, {
			root: setup.root,
			site: setup.site,
			intake: folds.intake.start({
				root: setup.root,
				site: setup.site
			}),
			seq: setup.seq,
			at: wholeSecond(setup.at),
			sessions: /* @__PURE__ */ new Map(),
			known: /* @__PURE__ */ new Map(),
			acts: /* @__PURE__ */ new Set(),
			refused: {},
			rolling: setup.rolling
		});
		for (const config of setup.configs) driver.begin(config);
		return driver;
	}
	/** From the origin of an exported firing: the folds continue as they stood there. */
	static from(folds, setup) {
		const { intake, known } = thawOrigin(setup.origin.bytes);
		const driver = new Driver(folds, {
			root: setup.root,
			site: setup.site,
			intake: folds.intake.thaw(intake),
			seq: setup.origin.seq,
			at: setup.origin.at,
			sessions: /* @__PURE__ */ new Map(),
			known,
			acts: /* @__PURE__ */ new Set(),
			refused: {},
			rolling: false
		});
		driver.begin(setup.origin.config);
		return driver;
	}
	/** The seconds before the entry, then the entry. */
	drive(entry) {
		this.tickUpTo(entry.at);
		this.state.seq = entry.seq;
		this.guarded(() => this.apply(entry));
		return this.take();
	}
	/** The seconds up to `at`, that one included. */
	advance(at) {
		this.tickUpTo(at);
		return this.take();
	}
	/** Effects of beginning, before the first entry. */
	take() {
		const effects = this.effects;
		this.effects = [];
		return effects;
	}
	/** After a long rest in which nobody fired the idle hours are left out, but for the last. */
	skipIdle(at) {
		const hour = Math.floor(at / hourMs) * hourMs;
		if (!this.state.rolling || hour - this.state.at < hourMs) return;
		for (const session of this.state.sessions.values()) if (session.openedAt !== null) return;
		this.state.at = hour;
		for (const session of [...this.state.sessions.values()]) this.begin(session.config);
	}
	tickUpTo(at) {
		const { state } = this;
		this.skipIdle(at);
		for (let second = state.at + secondMs; second <= at; second += secondMs) {
			state.at = second;
			const rolls = state.rolling && second % hourMs === 0;
			for (const session of state.sessions.values()) if (rolls && session.openedAt === null) this.begin(session.config);
			else this.guarded(() => this.step(session, second, tick));
		}
	}
	guarded(run) {
		try {
			run();
		} catch (problem) {
			this.effects.push({
				kind: "failed",
				seq: this.state.seq,
				problem
			});
		}
	}
	apply(entry) {
		switch (entry.kind) {
			case "message": return this.applyMessage(entry);
			case "act": return this.applyAct(entry, documentOf(entry));
			case "config": return this.applyConfig(entry, documentOf(entry));
			case "health": {
				const input = {
					kind: "health",
					...documentOf(entry)
				};
				remember(this.state.known, input);
				for (const session of this.state.sessions.values()) this.step(session, entry.at, input);
			}
		}
	}
	applyMessage(entry) {
		const { state, folds } = this;
		const result = folds.intake.step(state.intake, entry);
		state.intake = result.state;
		for (const refusal of result.refused) {
			state.refused[refusal.reason] = (state.refused[refusal.reason] ?? 0) + 1;
			this.effects.push({
				kind: "refused",
				entry,
				refusal
			});
		}
		for (const command of result.commands) this.effects.push({
			kind: "command",
			...command
		});
		const sender = entry.topic.split("/").slice(2, 4).join("/");
		for (const input of result.inputs) this.deliver(entry.at, sender, input);
	}
	deliver(at, sender, input) {
		const { sessions, known } = this.state;
		remember(known, input);
		if (input.kind === "sample") this.ear?.(input);
		if (input.kind === "sample" || input.kind === "channel") this.claimFor(at, input.channel);
		for (const session of sessions.values()) {
			if (!concerns(session.config, input, sender)) continue;
			this.step(session, at, input);
			if (input.kind === "sample") {
				session.samples++;
				this.plot(session, input);
			}
		}
	}
	claimFor(at, channel) {
		const { sessions, known } = this.state;
		for (const session of sessions.values()) if (channel in session.config.roles) return;
		const taken = claim(sessions.values(), channel) ?? this.handOver(at, channel);
		if (!taken) return;
		const { session } = taken;
		session.config = {
			...session.config,
			roles: {
				...session.config.roles,
				[channel]: taken.role
			}
		};
		this.step(session, at, {
			kind: "config",
			config: session.config
		});
		const node = nodeOf(channel);
		for (const earlier of [known.get(`channel ${channel}`), known.get(`node ${node}`)]) if (earlier) this.step(session, at, earlier);
	}
	/** While nobody fires, a role goes from a channel that has fallen silent to one of its name that speaks: a first try by hand must not keep it. */
	handOver(at, channel) {
		const role = roleByName(channel);
		if (role === null) return null;
		for (const session of this.state.sessions.values()) {
			if (session.openedAt !== null) continue;
			const { channels } = this.folds.kiln.view(session.state, at);
			const silent = (holder) => {
				const heard = channels.find((one) => one.channel === holder)?.heard ?? "never";
				return heard === "lost" || heard === "never" && at - session.origin.at > silentMs;
			};
			const holder = silentHolder(session.config, role, silent);
			if (holder === null) continue;
			const { [holder]: _given, ...roles } = session.config.roles;
			session.config = {
				...session.config,
				roles
			};
			return {
				session,
				role
			};
		}
		return null;
	}
	plot(session, input) {
		const role = roleAt(session.config, input.channel);
		if (role === null) return;
		const calibration = session.config.calibration[input.channel];
		const value = input.value === null || !calibration ? input.value : calibration.gain * input.value + calibration.offset;
		this.effects.push({
			kind: "point",
			kiln: session.config.kiln,
			session: session.id,
			point: {
				role,
				t: input.t,
				value
			}
		});
	}
	applyAct(entry, act) {
		const { state } = this;
		rememberAct(state.acts, act.id);
		let session = entry.kiln === null ? void 0 : state.sessions.get(entry.kiln);
		if (!session) return;
		const name = act.act.action;
		if (isOver(session, name)) session = this.close(session, entry);
		if (name === "load" || name === "arm" || name === "light") this.open(session, entry.at);
		if (name === "open") session.triedOpen = true;
		const { id, doneAt, corrects } = act;
		this.step(session, entry.at, {
			kind: "act",
			id,
			doneAt,
			act: act.act,
			...corrects === void 0 ? {} : { corrects }
		});
		if (name === "unload" && session.openedAt !== null) this.close(session, entry);
	}
	applyConfig(entry, config) {
		const session = this.state.sessions.get(config.kiln);
		if (!session) return void this.begin(config);
		session.config = config;
		this.step(session, entry.at, {
			kind: "config",
			config
		});
	}
	open(session, at) {
		if (session.openedAt !== null) return;
		session.openedAt = at;
		this.effects.push({
			kind: "opened",
			kiln: session.config.kiln,
			session: session.id,
			at,
			seq: this.state.seq
		});
	}
	close(session, entry) {
		this.effects.push({
			kind: "closed",
			kiln: session.config.kiln,
			session: session.id,
			at: entry.at,
			seq: entry.seq
		});
		return this.begin(session.config);
	}
	begin(config) {
		const { state, folds } = this;
		const before = state.sessions.get(config.kiln);
		const bytes = freezeOrigin(folds.intake.freeze(state.intake), state.known);
		const session = makeSession(folds.kiln.start(config), config, {
			seq: state.seq,
			at: state.at,
			config,
			bytes
		});
		if (before?.cause === session.cause) session.nextN = before.nextN;
		state.sessions.set(config.kiln, session);
		for (const input of state.known.values()) if (concerns(config, input, null)) this.step(session, state.at, input);
		return session;
	}
	step(session, at, input) {
		const result = this.folds.kiln.step(session.state, {
			...input,
			seq: this.state.seq,
			at
		});
		session.state = result.state;
		if (result.outputs.length > 0) this.tell(session, result.outputs);
	}
	tell(session, outputs) {
		const { seq } = this.state;
		const kiln = session.config.kiln;
		for (const output of outputs) {
			if (!lets(session.pace, output)) continue;
			if (session.cause !== seq) {
				session.cause = seq;
				session.nextN = 0;
			}
			this.effects.push({
				kind: "output",
				kiln,
				session: session.id,
				output: {
					...output,
					cause: seq,
					n: session.nextN++
				}
			});
			if (output.kind === "estimate") {
				const point = {
					role: "smoke-estimated",
					t: output.at,
					value: output.estimate.smokeC
				};
				this.effects.push({
					kind: "point",
					kiln,
					session: session.id,
					point
				});
			}
			if (output.kind === "phase") session.phase = output.phase;
			if (output.kind === "phase" && session.openedAt === null && this.folds.kiln.view(session.state, output.at).firing.litAt !== null) this.open(session, output.at);
		}
	}
};
/** Loading or lighting again after a trial opening, or loading again after the fire died, is another firing. */
function isOver(session, action) {
	if (session.openedAt === null) return false;
	return action === "load" ? session.triedOpen || session.phase === "failed" : action === "light" && session.triedOpen;
}
var nodeOf = (channel) => channel.slice(0, channel.lastIndexOf("/"));
/** @param sender node of the message that the input came from; null where it is told again at a beginning. */
function concerns(config, input, sender) {
	if (input.kind === "sample" || input.kind === "channel") return input.channel in config.roles;
	const node = input.kind === "node" ? input.node : sender;
	return node === null || Object.keys(config.roles).some((channel) => nodeOf(channel) === node);
}
// ../../work/w/calls/server/recordings/entries.ts
var encoder = new TextEncoder();
/** The journal entry that a line stands for. An act without an id gets the number of its line. */
function entryOf(line, place) {
	const { seq, at, kiln } = place;
	if ("topic" in line) {
		const payload = "bytes" in line ? fromBase64(line.bytes) : encoder.encode(JSON.stringify(line.payload) ?? "");
		return messageEntry({
			seq,
			at
		}, {
			topic: line.topic,
			payload,
			retained: line.retained ?? false
		});
	}
	if ("config" in line) return configEntry({
		seq,
		at
	}, {
		...line.config,
		kiln
	});
	if ("health" in line) return healthEntry({
		seq,
		at
	}, {
		code: line.health,
		on: line.on
	});
	const { at: _, id, doneAt, corrects, ...act } = line;
	return actEntry({
		seq,
		at
	}, kiln, {
		id: id ?? `line-${seq}`,
		at,
		doneAt: doneAt === void 0 ? at : Math.min(at, Date.parse(doneAt)),
		act,
		...corrects === void 0 ? {} : { corrects }
	});
}
// ../../work/w/calls/server/recordings/events.ts
var iso = (at) => new Date(at).toISOString();
var rounded = (value, digits) => Number(value.toFixed(digits));
/** The line of an output; null for what is no news to a reader of recordings: the operator's own doing. */
function eventOf(kiln, output) {
	const at = iso(output.at);
	switch (output.kind) {
		case "phase": return {
			at,
			event: "phase",
			phase: output.phase,
			because: output.because
		};
		case "call": return output.state === "done" ? null : {
			at,
			event: "call",
			call: output.call,
			state: output.state,
			because: output.because
		};
		case "alarm": {
			const { alarm, channel, state, priority, because } = output;
			return {
				at,
				event: "alarm",
				kiln,
				alarm,
				...channel === void 0 ? {} : { channel },
				state,
				priority,
				because
			};
		}
		case "hint": return {
			at,
			event: "hint",
			hint: output.hint,
			by: iso(output.by),
			because: output.because
		};
		case "forecast": {
			const { call, earliest, likely, latest } = output;
			return {
				at,
				event: "forecast",
				call,
				earliest: iso(earliest),
				likely: iso(likely),
				latest: iso(latest)
			};
		}
		case "estimate": {
			const { smokeC, smokeSd, tarShare, acidShare } = output.estimate;
			return {
				at,
				event: "estimate",
				smokeC: rounded(smokeC, 1),
				smokeSd: rounded(smokeSd, 1),
				tarShare: rounded(tarShare, 3),
				acidShare: rounded(acidShare, 3)
			};
		}
	}
}
function endOf(at, readings, refused) {
	return {
		at: iso(at),
		event: "end",
		readings,
		refused
	};
}
// ../../work/w/calls/server/recordings/play.ts
/** Plays a recording by its own times through the driver of the house, line by line. */
function* playLines(folds, { header, lines }) {
	const driver = driverFor(folds, header, lines);
	const config = [...driver.state.sessions.values()][0]?.config ?? defaultKilnConfig();
	let { seq, at } = driver.state;
	yield {
		at,
		entry: null,
		effects: driver.take()
	};
	for (const line of lines) {
		at = Math.max(at, Date.parse(line.at));
		const entry = entryOf(line, {
			seq: ++seq,
			at,
			kiln: config.kiln
		});
		yield {
			at,
			entry,
			effects: driver.drive(entry)
		};
	}
	return driver;
}
/** Plays a recording and gives what it tells, the line `end` last. */
function* play(folds, recording) {
	const steps = playLines(folds, recording);
	let readings = 0;
	let at = 0;
	for (let step = steps.next();; step = steps.next()) {
		if (step.done) return yield endOf(at, readings, step.value.state.refused);
		at = step.value.at;
		for (const effect of step.value.effects) {
			if (effect.kind === "point" && effect.point.role !== "smoke-estimated") readings++;
			if (effect.kind !== "output") continue;
			const line = eventOf(effect.kiln, effect.output);
			if (line) yield line;
		}
	}
}
function driverFor(folds, header, lines) {
	const { root, site } = placeOf(lines);
	const { start } = header;
	if (start && start.version === originVersion(folds)) {
		const origin = {
			seq: start.seq,
			at: Date.parse(start.at),
			config: start.config,
			bytes: fromBase64(start.intake)
		};
		return Driver.from(folds, {
			root,
			site,
			origin
		});
	}
	const config = start?.config ?? configOf(header);
	const at = start ? Date.parse(start.at) : firstAt(lines);
	return Driver.fresh(folds, {
		root,
		site,
		at,
		seq: start?.seq ?? 0,
		configs: [config],
		rolling: false
	});
}
/** First topic level and site, as the first message names them. */
function placeOf(lines) {
	const first = lines.find((line) => "topic" in line);
	const [root = "firing", , site = "yard"] = first && "topic" in first ? first.topic.split("/") : [];
	return {
		root,
		site
	};
}
function firstAt(lines) {
	const first = lines[0];
	return first ? Date.parse(first.at) : 0;
}
/** Defaults, with what the header says of the kiln in their place. */
function configOf({ title, kiln, charge, roles }) {
	const config = defaultKilnConfig();
	const cover = [
		"earth",
		"none",
		"brick"
	].find((known) => known === kiln?.cover);
	const way = firingWays.find((known) => known === kiln?.way);
	return {
		...config,
		name: title ?? config.name,
		volumeL: kiln?.volumeL ?? config.volumeL,
		cover: cover ?? config.cover,
		way: way ?? config.way,
		charge: charge ?? config.charge,
		roles: roles ?? config.roles
	};
}
// ../../work/w/calls/server/contract/act-schema.ts
var channel = z.string().min(1).max(200);
var alarm = {
	alarm: z.enum(alarmCodes),
	channel: channel.optional()
};
/** Bounds keep nonsense out, they are no limits of the trade. Masses kg, temperatures °C, volumes litres. */
var bare = z.discriminatedUnion("action", [
	z.object({
		action: z.literal("load"),
		massKg: z.number().positive().max(1e5).optional(),
		moisturePct: z.number().min(0).max(95).optional(),
		pieceMm: z.number().positive().max(2e3).optional(),
		drumC: z.number().min(-60).max(1500).optional(),
		earthC: z.number().min(-60).max(1500).optional()
	}),
	z.object({ action: z.literal("light") }),
	z.object({ action: z.literal("start-collecting") }),
	z.object({ action: z.literal("stop-collecting") }),
	z.object({ action: z.literal("refuel") }),
	z.object({ action: z.literal("wet-condenser") }),
	z.object({
		action: z.literal("swap-bottle"),
		litres: z.number().min(0).max(1e3).optional()
	}),
	z.object({ action: z.literal("stop-feeding") }),
	z.object({
		action: z.literal("air"),
		mouth: z.enum(openings).optional(),
		chimney: z.enum(openings).optional()
	}),
	z.object({ action: z.literal("refine") }),
	z.object({
		action: z.literal("weather"),
		weather: z.enum(weathers)
	}),
	z.object({ action: z.literal("seal") }),
	z.object({ action: z.literal("crack") }),
	z.object({ action: z.literal("reseal") }),
	z.object({ action: z.literal("open") }),
	z.object({
		action: z.literal("unload"),
		charcoalKg: z.number().min(0).max(1e5).optional(),
		finesKg: z.number().min(0).max(1e5).optional()
	}),
	z.object({
		action: z.literal("glass"),
		number: z.number().int().min(0).max(1e4),
		drip: z.enum(dripLooks).optional(),
		photo: z.boolean().optional()
	}),
	z.object({
		action: z.literal("observe"),
		smoke: z.enum(smokeLooks).optional(),
		drip: z.enum(dripLooks).optional()
	}),
	z.object({
		action: z.literal("note"),
		text: z.string().max(4e3)
	}),
	z.object({
		action: z.literal("reading"),
		channel,
		value: z.number().min(-300).max(3e3)
	}),
	z.object({
		action: z.literal("arm"),
		tablet: z.boolean().optional(),
		buzzer: z.boolean().optional()
	}),
	z.object({
		action: z.literal("acknowledge"),
		...alarm
	}),
	z.object({
		action: z.literal("shelve"),
		...alarm,
		minutes: z.number().positive().max(1440)
	}),
	z.object({
		action: z.literal("unshelve"),
		...alarm
	})
]);
/** A charge may stand in `load` as an object of its own, as the header writes it. */
function flattenCharge(value) {
	if (typeof value !== "object" || value === null) return value;
	const { charge, ...rest } = value;
	return typeof charge === "object" && charge !== null ? {
		...charge,
		...rest
	} : value;
}
/** What a person did or saw; unknown members are dropped, an unknown action is a problem. */
var actionSchema = z.preprocess(flattenCharge, bare);
var actIdSchema = z.string().min(1).max(80).regex(/^[\x21-\x7e]+$/);
// ../../work/w/calls/server/recordings/schema.ts
var time = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)$/, "is no time like 2026-03-01T07:30:05.000Z").refine((text) => Number.isFinite(Date.parse(text)), "is no time of the calendar");
var charge = z.object({
	massKg: z.number().positive().optional(),
	moisturePct: z.number().min(0).max(95).optional(),
	pieceMm: z.number().positive().optional()
});
var roleByChannel = z.record(z.string(), z.enum(roles));
/** The settings of a kiln as an export carries them; only their shape is checked here, their bounds were checked when they were set. */
var configSchema = z.object({
	kiln: z.string().min(1),
	name: z.string(),
	volumeL: z.number().positive(),
	cover: z.enum([
		"earth",
		"none",
		"brick"
	]),
	way: z.enum(firingWays),
	charge,
	roles: roleByChannel,
	calibration: z.record(z.string(), z.object({
		gain: z.number(),
		offset: z.number()
	})),
	limits: z.object({
		smokeStartC: z.number(),
		smokeStopC: z.number(),
		condenserNoticeC: z.number(),
		condenserWarningC: z.number(),
		condenserOnDelayS: z.number(),
		condenserOffDelayS: z.number(),
		condenserDeadBandK: z.number(),
		fireLowC: z.number(),
		fireOutC: z.number(),
		openHottestC: z.number(),
		openMinimumWaitH: z.number(),
		coCautionPpm: z.number(),
		coLeavePpm: z.number()
	}),
	worth: z.object({
		good: z.number(),
		tarry: z.number(),
		watery: z.number()
	}),
	altitudeM: z.number(),
	seed: z.number(),
	prior: z.record(z.string(), z.object({
		mean: z.number(),
		sd: z.number()
	})).optional()
});
var headerSchema = z.object({
	recording: z.literal(1),
	title: z.string().optional(),
	kiln: z.object({
		volumeL: z.number().positive().optional(),
		cover: z.string().optional(),
		way: z.string().optional()
	}).optional(),
	charge: charge.optional(),
	roles: roleByChannel.optional(),
	demo: z.boolean().optional(),
	start: z.object({
		at: time,
		seq: z.number().int().min(0),
		config: configSchema,
		intake: z.base64(),
		version: z.number().int()
	}).optional()
});
var message = z.object({
	at: time,
	topic: z.string().min(1),
	payload: z.unknown(),
	retained: z.boolean().optional()
});
var bytes = z.object({
	at: time,
	topic: z.string().min(1),
	bytes: z.base64(),
	retained: z.boolean().optional()
});
var stampedAct = z.object({
	at: time,
	id: actIdSchema.optional(),
	doneAt: time.optional(),
	corrects: actIdSchema.optional()
});
var config = z.object({
	at: time,
	config: configSchema
});
var health = z.object({
	at: time,
	health: z.enum(healthCodes),
	on: z.boolean()
});
/** The schema that a line has to meet, chosen by what it carries. */
function lineSchema(line) {
	if ("topic" in line) return "bytes" in line ? bytes : message;
	if ("action" in line) return z.intersection(stampedAct, actionSchema);
	if ("config" in line) return config;
	if ("health" in line) return health;
	return z.never("carries neither topic, action, config nor health");
}
// ../../work/w/calls/server/recordings/read.ts
/** The file is no recording; the message is one sentence that names the line. */
var RecordingProblem = class extends Error {
	line;
	constructor(line, what) {
		super(line === null ? what : `line ${line}: ${what}`);
		this.name = "RecordingProblem";
		this.line = line;
	}
};
var largestBytes = 1 << 29;
/** Reads a recording, plain or compressed. @throws RecordingProblem at the first line that is none. */
function readRecording(file) {
	const [first = "", ...rest] = rowsOf(textOf(file));
	return {
		header: headerOf(first),
		lines: rest.map((row, index) => lineOf(row, index + 2))
	};
}
/** At least one. */
function rowsOf(text) {
	const rows = text.split("\n");
	while (rows.length > 0 && rows.at(-1)?.trim() === "") rows.pop();
	if (rows.length === 0) throw new RecordingProblem(null, "the file is empty");
	return rows;
}
function textOf(file) {
	const zipped = file[0] === 31 && file[1] === 139;
	let plain = file;
	if (zipped) try {
		plain = gunzipSync(file, { maxOutputLength: largestBytes });
	} catch {
		throw new RecordingProblem(null, "the compressed file is damaged or too large");
	}
	try {
		return new TextDecoder("utf-8", { fatal: true }).decode(plain);
	} catch {
		throw new RecordingProblem(null, "the file is no UTF-8 text");
	}
}
function headerOf(row) {
	const value = objectOf(row, 1);
	if (!("recording" in value)) throw new RecordingProblem(1, "the first line is no header with \"recording\": 1");
	if (value.recording !== 1) throw new RecordingProblem(1, `recording version ${JSON.stringify(value.recording)} is not known here, only 1`);
	return check(headerSchema, value, 1);
}
function lineOf(row, number) {
	const value = objectOf(row, number);
	return check(lineSchema(value), value, number);
}
function objectOf(row, number) {
	let value;
	try {
		value = JSON.parse(row);
	} catch {
		throw new RecordingProblem(number, "is no JSON");
	}
	if (typeof value !== "object" || value === null || Array.isArray(value)) throw new RecordingProblem(number, "is no JSON object");
	return value;
}
function check(schema, value, number) {
	const result = schema.safeParse(value);
	if (result.success) return result.data;
	const issue = result.error.issues[0];
	throw new RecordingProblem(number, `${issue && issue.path.length > 0 ? `"${issue.path.join(".")}" ` : ""}${issue?.message ?? "is not understood"}`);
}
// why.ts
for (const file of process.argv.slice(2)) {
	const rec = readRecording(readFileSync(file));
	const truth = JSON.parse(readFileSync(file.replace(".jsonl.gz", ".truth.json"), "utf8"));
	const lit = Date.parse(truth.lit);
	rec.lines = rec.lines.filter((l) => Date.parse(l.at) <= Date.parse(truth.sealed) + 6e4);
	const fold = makeKilnFold(pair);
	let last = 0;
	const w = {
		...fold,
		step(s, i) {
			const r = fold.step(s, i);
			const m = Math.floor((i.at - lit) / 6e4);
			if (m >= last + 10) {
				last = m;
				const st = r.state, e = st.model?.ensemble, sh = st.model?.judge.shares;
				console.log(m, st.phase.phase, [
					"firebox",
					"wall",
					"outlet",
					"smoke"
				].map((k) => mean(st.past[k], 10)?.toFixed(0)).join(" "), "worth", e?.standing.worth.toFixed(2), "start", e?.standing.start, "open", st.window.open, "turning", JSON.stringify(st.window.turning)?.slice(0, 120), "sh", sh?.map((x) => x.toFixed(2)).join(" "), "truth", truth.minutes.slice(m, m + 10).reduce((a, x) => a.map((v, k) => v + x[k]), [
					0,
					0,
					0
				]).map((x) => x.toFixed(2)).join(" "), e?.estimate ? e.estimate.acidShare.toFixed(3) : "");
			}
			return r;
		}
	};
	for (const e of play({
		intake: intakeFold,
		kiln: w
	}, rec)) if (e.event === "call") console.log("   CALL", ((Date.parse(e.at) - lit) / 6e4).toFixed(0), e.call, e.state, JSON.stringify(e.because).slice(0, 200));
}
export {};
