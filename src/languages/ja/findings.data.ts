import type { Messages } from "../../report/index.js";

/** Japanese: what was found, and what it means. */
export const findings: Messages["finding"] = {
  "missing-temperature": [
    "温度の記載なし",
    "約 25\u00a0°C と仮定しました。バッテリー本体で測定してください。",
  ],
  "missing-rest-history": [
    "測定前の静置の記載なし",
    "直前に何をし、その後どれだけ静置したかで、電圧の意味が変わります。両方を記録してください。",
  ],
  "missing-charge-measurement": [
    "充電状態は未測定",
    "充電状態を示す有効な測定値がありません。電圧が落ち着いてから開放電圧を測定してください。",
  ],
  "missing-ability-measurement": [
    "始動能力は未測定",
    "開放電圧で分かるのは充電状態で、始動能力ではありません。クランキング電流を測定するか、負荷試験を行ってください。",
  ],
  "missing-instrument-uncertainty": ["測定器の不確かさの記載なし", "測定値の {assumed:%1} と仮定しました。"],
  "missing-voltmeter-uncertainty": [
    "電圧計の不確かさの記載なし",
    "{assumedVolts:V} (標準不確かさ) と仮定しました。",
  ],
  "missing-inspection-date": ["点検日の記載なし", "点検日がないと、製造日コードから経過期間が分かりません。"],
  "chemistry-unknown": [
    "バッテリーの種類が不明",
    "充電状態の確かさが下がり、充電電圧を示せません。ラベルで確認してください。",
  ],
  "label-refused": [
    "型式コードを読み取れず",
    "「{text}」を {scheme} として読み取れませんでした。ラベルで確認してください。",
  ],
  "rating-estimated": [
    "定格値は推定のみ",
    "ラベルに定格値がなく、型式から約 {amperes:A} と推定しました。大きく外れることがあります。",
  ],
  "rating-not-comparable": [
    "測定値と定格値を比較できず",
    "理由: {reason:w}。ラベルと同じ規格か、換算できる規格で測った値だけが始動能力を示します。",
  ],
  "rating-edition-unstated": [
    "EN のレベルの記載なし",
    "レベル 2 はレベル 1 より最大 15\u00a0% 低いため、不確かさに {relativeUncertainty:%1} を加えました。",
  ],
  "date-code-ambiguous": [
    "製造日コードの読み方が複数",
    "「{text}」には {readings:n} 通りの読み方があります。[あれば役立つもの: {settledBy:w}。]",
  ],
  "date-code-refused": [
    "製造日コードを読み取れず",
    "「{text}」を日付として読み取れませんでした。バッテリーの表示を確認してください。",
  ],
  "date-code-confusable": [
    "製造日コードに紛らわしい文字",
    "「{text}」の {read} は {couldBe} かもしれません。もう一度確かめてください。",
  ],
  "case-damaged": [
    "目に見える損傷",
    "確認されたもの: {signs:w}。充電、負荷の接続、ジャンプスタートをしないでください。",
  ],
  "frozen-seen": ["バッテリー内に氷", "充電、負荷の接続、ジャンプスタートをしないでください。"],
  "frozen-possible": [
    "凍結のおそれ",
    "温度は {temperatureCelsius:°C} です。測定値が示す薄い電解液は {freezingPointCelsius:°C} で凍ります。凍結しているものとして扱ってください。",
  ],
  "near-freezing": [
    "凍結寸前",
    "この温度からあと 3\u00a0°C 足らず下がると、電解液が凍ります。早めに温めてから充電してください。",
  ],
  "electrolyte-low": [
    "電解液の液面が低い",
    "極板が露出しているおそれがあります。測定値は小さいバッテリーのように低く出て、充電すると発熱とガスが生じます。充電の前に必ず蒸留水を補ってください。",
  ],
  "other-system-voltage": [
    "12\u00a0V バッテリーではない",
    "[測定値は {volts:V} です。]この方法は当てはまりません。",
  ],
  "system-voltage-unclear": [
    "システム電圧が不明確",
    "{volts:V} は、12\u00a0V バッテリーの値と確実には言えません。ラベルと接続を確認してください。",
  ],
  "no-voltage": ["電圧がほとんどない", "端子間で {volts:V} です。接触不良か内部の断線が考えられます。"],
  "voltage-above-rest": [
    "開放電圧ではない",
    "これだけ時間がたって {volts:V} を保つバッテリーはありません。充電器かエンジンがまだ動いています。",
  ],
  "reversed-polarity": ["測定値の極性が逆", "測定値は {volts:V} です。測定リードを逆に当てたと思われます。"],
  "reversed-after-check": [
    "バッテリーの極性が逆転",
    "測定リードを確認したうえで {volts:V} なので、逆向きに充電されています。充電も接続もしないでください。",
  ],
  "surface-charge": [
    "表面電荷の影響を否定できず",
    "{volts:V} は高すぎる可能性があり、実際の充電状態は見かけより低いかもしれません。",
  ],
  "rest-extrapolated": [
    "開放電圧は外挿値",
    "{volts:V} は、記録した電圧変化から求めた到達値で、十分に静置した後の測定値ではありません。どこまで確かかは、その不確かさが示します。",
  ],
  "vehicle-loads-possible": [
    "車両側の負荷を否定できず",
    "ランプ、ブロワー、ECU などが作動していると、測定値が下がります。切ってください。",
  ],
  "temperature-unusual": [
    "通常と異なる温度",
    "{temperatureCelsius:°C} はあり得る値です。値と単位を確認してください。",
  ],
  "readings-scatter": [
    "測定値のばらつき",
    "ばらつきは {relative:%} ですが、測定器で説明できるのは {limit:%} です。まずクリップと端子を疑ってください。",
  ],
  "temperature-compensation-assumed": [
    "温度補正は仮定",
    "測定器が {temperatureCelsius:°C} を考慮したものとみなし、不確かさに {relativeUncertainty:%1} を加えました。",
  ],
  "electrical-load-present": [
    "電装品が作動中",
    "測定中に {amperes:d}\u00a0A が流れていました。その影響は約 {shiftMillivolts:mV} で、続くほど大きくなります。切ってから測り直してください。",
  ],
  "modules-may-be-awake": [
    "ECU がまだ休止していない可能性",
    "最後の操作から {minutesSinceLocked:min} です。多くの ECU は {neededMinutes:min} たってから休止します。施錠し、キーを遠ざけて待ってください。",
  ],
  "contact-spread": [
    "クリップの付け直しで測定値が変化",
    "付け直すと測定値が {between:%1} 動きます。同じ状態での繰り返しで説明できるのは {limit:%1} です。端子を清掃し、クリップはスタッドやアダプターではなく鉛の端子に付けてください。",
  ],
  "low-reading-in-vehicle": [
    "車載状態の低い測定値は不利に扱わない",
    "理由: {reasons:w}。ケーブルを外し、バッテリー自身の端子で測り直してください。",
  ],
  "ability-implausible": [
    "あり得ない測定値",
    "定格の {ratio:%} という始動能力はあり得ません。クリップ、設定、ラベルを疑ってください。",
  ],
  "cell-missing": [
    "セルの故障",
    "充電を終えても {shortfallVolts:V} 足りません。6 セル中 {cells:n} セルが故障した場合に相当します。",
  ],
  "cell-missing-unproven": [
    "セル故障時と同じ低い電圧",
    "{shortfallVolts:V} 足りず、6 セル中 {cells:n} セルが故障した場合に相当します。空のバッテリーでも同じ値になることがあります。",
  ],
  "cell-spread": [
    "特定のセルだけが大幅に弱い",
    "比重の差は {spread:g}、限度は {limit:g} です。最も低いのはセル {weakestCell:n} です。",
  ],
  "cell-spread-unproven": [
    "セル間に差があるが未確定",
    "比重の差は {spread:g}、限度は {limit:g} です。最も低いのはセル {weakestCell:n} です。満充電にして電解液を混ぜた後の値で判断します。",
  ],
  "charge-low": [
    "充電不足",
    "測定値では {stateOfCharge:c} ですが、{limit:%} が必要です。これは不良ではありません。",
  ],
  "charge-above-full": [
    "満充電を超える測定値",
    "この種類の満充電の値より高くなっています。種類と測定値を確認してください。",
  ],
  "charge-below-empty": ["空を下回る測定値", "深く放電しています。どの程度かは分かりません。"],
  "cells-not-all-measured": ["一部のセルが未測定", "ほかのセルについては何も分かりません。"],
  "charge-not-established": [
    "充電状態が十分に確かではない",
    "{limit:%} に達している確率: {probability:p}。この確かさでは、始動能力が低くても不利に扱えません。",
  ],
  "charge-evidence-disagrees": [
    "電圧と比重の不一致",
    "充電状態は、電圧では {fromVoltage:c}、比重では {fromGravity:c} です。静置し、電解液を混ぜてから測り直してください。",
  ],
  "charge-history-contradicted": [
    "充電を終えたのに低い",
    "測定値では {stateOfCharge:c} です。充電器とそのクリップを確認してください。バッテリーが充電を受け付けなかった可能性もあります。",
  ],
  "ability-above": [
    "始動能力は限度以上",
    "定格の {ratio:%} です。{limit:%} 以上である確率: {probability:p}。",
  ],
  "ability-between": [
    "始動能力は限度付近",
    "定格の {ratio:%} です。{limit:%} 以上である確率: {probability:p}。どちらとも決められません。",
  ],
  "ability-worn": [
    "始動能力が限度未満",
    "定格の {ratio:%} です。{limit:%} 未満である確率: {probability:p}。必要な電流が小さければ、まだ足りることもあります。",
  ],
  "ability-below": [
    "始動能力が大幅に不足",
    "定格の {ratio:%} です。{limit:%} 未満である確率: {probability:p}。",
  ],
  "ability-not-judged": [
    "低い始動能力は不利に扱わない",
    "充電不足では、どのバッテリーも低い値になります。今の状態で限度に達している確率: {probability:p}。",
  ],
  "ability-evidence-disagrees": [
    "始動能力の測定結果が不一致",
    "[負荷試験: {loadTest:w}。]推定値は定格の {lowest:%} から {highest:%} です。どれかが誤りです。",
  ],
  "load-test-passed": [
    "負荷試験に合格",
    "限度 {limit:V} を {marginVolts:V} 上回りました。真に合格である確率: {probability:p}。",
  ],
  "load-test-failed": [
    "負荷試験に不合格 (初回)",
    "限度 {limit:V} を {marginVolts:-V} 下回りました。これだけでは不良と判断できません。",
  ],
  "load-test-failed-again": [
    "充電後の負荷試験にも不合格",
    "限度 {limit:V} を {marginVolts:-V} 下回りました。真に合格である確率: {probability:p}。",
  ],
  "load-test-undecided": [
    "負荷試験の結果は限度付近",
    "限度 {limit:V} に近すぎます。真に合格である確率: {probability:p}。",
  ],
  "load-test-not-valid": ["負荷試験は無効", "理由: {reasons:w}。"],
  "requirement-met": ["このエンジンには十分", "最も寒い朝に始動できる確率: {probability:p}。"],
  "requirement-not-met": ["このエンジンには不足", "最も寒い朝に始動できる確率: {probability:p}。"],
  "requirement-undecided": ["このエンジンに足りるか不確か", "最も寒い朝に始動できる確率: {probability:p}。"],
  "requirement-not-judged": ["エンジン始動は予測できず", "理由: {reason:w}。"],
  "vehicle-uncertainty-assumed": [
    "車両測定値の不確かさは仮定",
    "標準不確かさ: 電圧降下 {dropMillivolts:mV}、電流 {relativeAmperes:%}、暗電流 {drawMilliamperes:mA}、リップル {relativeRipple:%}。",
  ],
  "vehicle-reading-undecided": [
    "限度に近すぎる",
    "{reading:w}: 限度を守っている確率: {probability:p}。どちらとも決められません。",
  ],
  "cranking-voltage-held": ["クランキング中も電圧を維持", "端子間で {volts:V}、限度は {limit:V} です。"],
  "cranking-voltage-low": [
    "クランキング中の電圧が下がりすぎ",
    "端子間で {volts:V}、限度は {limit:V} です。バッテリー、ケーブル、スターター、回転の重いエンジンが考えられます。",
  ],
  "cranking-current-usual": [
    "スターター電流は正常",
    "{amperes:A} です。このエンジンの限度は {limit:A} です。",
  ],
  "cranking-current-high": [
    "スターター電流が過大",
    "{amperes:A} です。このエンジンの限度は {limit:A} です。スターターかエンジンが原因です。",
  ],
  "slow-with-high-current": ["電流が大きく、回転が遅い", "点検箇所: {lookAt:w}。"],
  "slow-with-low-current": ["電流が小さく、回転が遅いか回らない", "点検箇所: {lookAt:w}。"],
  "slow-at-full-voltage": ["電圧は保たれているが回転が遅い", "点検箇所: {lookAt:w}。"],
  "no-turning-at-full-voltage": ["電圧は保たれているが回らない", "点検箇所: {lookAt:w}。"],
  "voltage-drop-high": [
    "スターターまでの経路で電圧を損失",
    "{reading:w}[: {volts:V}、限度は {limit:V}][: {milliohms:mΩ}、限度は {limit:mΩ}]。",
  ],
  "voltage-drops-within": [
    "スターターまでの経路は正常",
    "クランキング中の電圧降下は、プラス側、アース側とも限度内です。",
  ],
  "regulated-voltage-within": ["充電電圧は正常", "端子間で {volts:V} です。"],
  "regulated-voltage-low": [
    "充電電圧が低すぎる",
    "端子間で {volts:V} です。この温度では {limit:V} 以上が必要です。",
  ],
  "regulated-voltage-high": [
    "充電電圧が高すぎる",
    "端子間で {volts:V} です。許容されるのは {limit:V} までです。このままでは電解液が減り、なくなります。",
  ],
  "charging-not-judged": ["充電電圧は判断できず", "端子間で {volts:V} です。理由: {reason:w}。"],
  "charging-rise-enough": [
    "負荷をかけても充電できている",
    "ライトとブロワーを使っても、エンジン停止時の値より {volts:V} 高い状態を保っています。",
  ],
  "charging-rise-low": [
    "エンジンをかけても電圧がほとんど上がらない",
    "上昇は {volts:V} です。少なくとも {limit:V} が必要です。",
  ],
  "charging-rise-high": [
    "エンジンをかけると電圧が上がりすぎる",
    "上昇は {volts:V} です。{limit:V} までが限度です。",
  ],
  "charging-drop-high": [
    "オルタネーターからの経路で電圧を損失",
    "{reading:w}: {volts:V}、限度は {limit:V} です。",
  ],
  "ripple-within": [
    "リップルは選んだ限度内",
    "{volts:V} です。この限度は {limit:V} です。ほかに、十倍違う限度もあります。",
  ],
  "ripple-high": [
    "リップルが選んだ限度を超過",
    "{volts:V} です。この限度は {limit:V} です。オルタネーターのダイオードか、弱ったバッテリーが考えられます。",
  ],
  "draw-expected": ["駐車中の暗電流は正常", "{milliamperes:mA} です。通常は {limit:mA} までです。"],
  "draw-explained": [
    "暗電流は装備品で説明できる",
    "{milliamperes:mA} です。通常は {limit:mA} までです。それでも、放置できる期間は短くなります。",
  ],
  "draw-high": [
    "駐車中の暗電流が過大",
    "[{milliamperes:mA} です。通常は {limit:mA} までです。]何かが切れずに残っています。",
  ],
  "draw-not-settled": [
    "暗電流の測定が早すぎる",
    "{settledMinutes:min} 経過時点で {milliamperes:mA} です。ECU がまだ休止していなかった可能性があります。{neededMinutes:min} 待ってください。",
  ],
  "standing-time": [
    "放置できる期間",
    "充電状態 {fromCharge:c} で置き始め、この暗電流が続くなら、{fromDays:d}～{toDays:d} 日間は始動できる見込みです。低温と自己放電で短くなります。",
  ],
  "flat-by-drain": [
    "放電は暗電流だけで説明できる",
    "放置期間: {parkedDays:d} 日。健全なバッテリーでもその時点で始動できない確率: {probability:p}。",
  ],
  "flat-too-fast-for-drain": [
    "暗電流で説明できるより早い放電",
    "放置期間: {parkedDays:d} 日。健全なバッテリーでもその時点で始動できない確率: {probability:p}。バッテリーの劣化か、測定中は切れていた電装品が考えられます。",
  ],
  "flat-unexplained": [
    "放置期間からは決められない",
    "放置期間: {parkedDays:d} 日。健全なバッテリーでもその時点で始動できない確率: {probability:p}。",
  ],
  "charge-sufficient": ["判断できるだけの充電がある", "[必要な値に達している確率: {probability:p}。]"],
  "starter-or-engine": [
    "バッテリーとケーブルは原因ではない",
    "残るのは、スターター、エンジン、エンジンオイルです。",
  ],
  "causes-conflict": [
    "原因について測定結果が矛盾",
    "肯定と否定の両方の結果があるもの: {cause:w}。決め手: {settleBy:w}。",
  ],
  "cause-unclear": ["測定した範囲では原因不明", "[まだ分からないもの: {open:w}。]"],
};
