import type { GuidanceMessages } from "../../report/index.js";

/** Japanese: what the guidance says. */
export const guidance: GuidanceMessages = {
  step: {
    "look-over":
      "何にも触れる前に、目で調べてください: 亀裂、液漏れ、膨れ、端子の焼損や緩み、硫黄の臭い、氷。電解液の液面が低くないかも記録してください。",
    "read-label":
      "ラベルを読んでください: バッテリーの種類、クランキング電流の定格値とその規格、または型式コード。",
    "check-leads": "端子を清掃し、両方の測定リードを端子の極性表示と照らし合わせ、もう一度測定してください。",
    "measure-temperature": "室温ではなくバッテリーの温度を測定し、測り方を記録してください。",
    "tell-rest-history": "最後に何をしたか (充電、走行、放電) と、それが何時間前だったかを調べてください。",
    "measure-rest-voltage": "充電器と負荷を切り、端子間の電圧を測定してください。",
    "draw-off-surface-charge":
      "表面電荷を取り除いてください: ライトを 15\u00a0s 点灯してから消します。3～10\u00a0min 待って、電圧を測り直してください。",
    "measure-gravity":
      "開けるように作られた液口栓があれば、目と手を保護し、比重計で各セルの電解液を測定してください。なければ、この手順は飛ばしてください。",
    "measure-cranking": "手持ちの測定器[ (規格の設定は {standard}) ]でクランキング電流を測定してください。",
    "repeat-reading": "毎回クリップを付け直し、測定値が {readings:n} 個になるまで繰り返してください。",
    "top-up-water":
      "液口栓があれば、目と手を保護し、精製水を極板が隠れるまで補ってください。それ以上は入れず、酸は決して加えないでください。",
    "warm-up":
      "室温になるまで待ってください。その後、氷と亀裂をもう一度調べ、バッテリーの温度を測定してください。",
    "cool-down":
      "45\u00a0°C 未満に冷めるまで待ってください。その後、膨れをもう一度調べ、バッテリーの温度を測定してください。",
    "change-room":
      "充電の前に、もっと換気のよい部屋に移し[ (外気 {neededCubicMetresPerHour:m³/h}、換気扇がなければ空間 {freeVolumeCubicMetres:m³})]、その部屋を記録してください。そのような部屋がなければ、充電しないでください。",
    charge:
      "風通しのよい所で満充電にしてください[: {fromAmperes:n}～{toAmperes:A}、上限 {endVolts:V}][、約 {fromHours:d}～{toHours:h}]。{hours:h} 静置し、電圧を測定してください。それまでの測定値は無効になります。",
    "load-test": "負荷試験を行ってください: {loadAmperes:A} を 15\u00a0s 流し、最後に電圧を読みます。",
    "charge-and-repeat-load-test":
      "風通しのよい所で満充電にし[ ({fromAmperes:n}～{toAmperes:A}、上限 {endVolts:V})]、{hours:h} 静置し、電圧を測定してから、{loadAmperes:A} で負荷試験をもう一度行ってください。",
    "read-date-code": "電槽、端子、ステッカーの製造日コードを読み、今日の日付を記録してください。",
    "give-purchase-and-terms": "販売の内容と購入証明、保証条件を記録してください。",
  },
  reason: {
    "hazard-first":
      "損傷したり凍結したりしたバッテリーは、測る人を傷つけることがあります。これより先にすることはありません。",
    "nothing-without-label": "何と比べるかが分からなければ、測定値は何も示しません。",
    "connection-doubtful": "この測定値は、バッテリーではなく、クリップやリードによるもののようです。",
    "temperature-unknown":
      "すべての測定値が温度に左右されます。温度が分からないまま、充電器や負荷をつないではいけません。",
    "rest-history-unknown": "どれだけ静置したかが分かって初めて、電圧から充電状態が分かります。",
    "charge-unknown": "低い測定値をバッテリーの不利に扱えるかどうかは、充電状態で決まります。",
    "surface-charge-possible":
      "表面電荷のため、まったく充電されていないバッテリーが隠れているかもしれません。",
    "charge-uncertain": "電解液と電圧の両方を測れば、片方だけより充電状態がよく分かります。",
    "ability-unknown": "出せる能力は、まだ何も測定されていません。",
    "one-reading-uncertain": "測定を重ねれば答えが絞られます。保証請求には、繰り返した測定が必要です。",
    "plates-uncovered": "液面から出た極板は充電中に発熱するため、このままで充電してはいけません。",
    "too-cold-to-charge": "充電するには冷たすぎ、氷が隠れているかもしれません。",
    "too-hot-to-charge": "充電するには熱すぎます。",
    "room-without-air": "充電する部屋の換気では、充電で出る爆発性のガスを逃がせません。",
    "too-little-charge": "充電不足での低い測定値は、バッテリーの不良を示す証拠になりません。",
    "ability-between-limits":
      "これまでの測定値では決まりません。大きな負荷をかける試験は、別の種類の証拠になります。",
    "first-failure-needs-repeat":
      "負荷試験の初回の不合格は、充電不足かもしれません。不良と決めるのは、二回目の不合格です。",
    "age-unknown": "購入証明がない場合や、販売までの期間に限度がある場合は、保証期間を製造日から数えます。",
    "claim-open": "バッテリーは使用を終えます。保証で支払われる額は、販売の内容と保証条件で決まります。",
  },
  end: {
    hazard: "ここで中止してください。隔離し、何も測定しないでください。",
    "other-system": "ここで中止してください。12\u00a0V バッテリーではないため、この方法は使えません。",
    settled: "これ以上は必要ありません。手順を足しても、答えはほとんど変わりません。",
    "nothing-left": "まだ行っていない安全な手順はもうありません。答えは未確定のままです。",
    "not-evaluable": "ラベルがないか、測定値が一つもなければ、答えは出ません。",
  },
  why: "理由: {reason}",
  risk: "今、答えが誤っている確率: {riskNow:p}。この手順で平均 {drop:p} 減ります。",
  prepares: "今、答えが誤っている確率: {riskNow:p}。この手順で次の手順が意味を持ちます。",
  residual: "答えが誤っている可能性は残ります: {riskNow:p}。",
  untaken: "妨げになっているもの: {reason}",
};
