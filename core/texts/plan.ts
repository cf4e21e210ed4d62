/** Which texts does plan say? One row a text; {name} stands for what is filled in. */
export const planTexts = {
  "plan.hours-ledger.0-hours-or-more-null-where": "0 hours or more; null where not known",
  "plan.hours-ledger.hours-not-known-the-sum-leaves": "Hours not known: {lines}. The sum leaves them out.",
  "plan.hours-ledger.is-give-0-hours-or-more": "{place} is {hours}; give 0 hours or more.",
  "plan.into-sessions.waits-counted-in-days-of-the": "waits counted in days of the calendar",
  "plan.into-sessions.waits-in-days-of-the-calendar": "waits in days of the calendar, and work cut at closing time",
  "plan.into-sessions.work-cut-at-closing-time": "work cut at closing time",
  "plan.mass-ledger.0-or-more-null-for-a": "0 or more; null for a mass that is not known",
  "plan.mass-ledger.g-lies-across-the-wanted-g": "{massG} ± {halfWidthG} g lies across the wanted {limitG} g.",
  "plan.mass-ledger.mass-not-known-the-sum-leaves": "Mass not known: {lines}. The sum leaves them out.",
  "plan.mass-ledger.of-is-give-0-or-more": "{key} of {line} is {given}; give 0 or more.",
  "plan.mass-ledger.weigh": "Weigh {what} ({id})",
  "plan.mass-ledger.weigh-2": "Weigh {what} ({line})",
  "plan.meant-sessions.do-of-it-earlier-or-find": "Do {over} of it earlier{roomCount}, or find one longer {word}.",
  "plan.meant-sessions.free": " (free: {room})",
  "plan.meant-sessions.has": "{word} {session} has {free}",
  "plan.meant-sessions.holds-of-tasks-in": "{word} {session} holds {session2} of tasks ({ids}) in {lengthH}.",
  "plan.meant-sessions.is-meant-for-but-what-leaves":
    "{operation} ({what}) is meant for {word} {session}, but what {id} leaves {ready}: {waitDays} days of 24 h count from its end.",
  "plan.meant-sessions.is-not-ready-on-that-at": "is not ready on that {word} at all",
  "plan.meant-sessions.is-ready-only-into-it": "is ready only {intoH} into it",
  "plan.meant-sessions.work-only-where-was-not-end":
    "Work only where {id} was not, end {id} earlier on its {word}, or move {operation}.",
  "plan.money-ledger.0-or-more": "0 or more",
  "plan.money-ledger.0-or-more-null-for-a": "0 or more; null for a price that is not known",
  "plan.money-ledger.an-id-that-no-other-line": "an id that no other line has",
  "plan.money-ledger.ask-the-price-of": "Ask the price of {what} ({id})",
  "plan.money-ledger.is-give-0-or-more": "{key} is {given}; give 0 or more.",
  "plan.money-ledger.price-not-known-the-total-leaves":
    "Price not known: {lines}. The total leaves them out; it is not what the build costs.",
  "plan.money-ledger.stands-in-the-list-twice-give":
    "{line} stands in the list twice; give the number of pieces instead.",
  "plan.network.0-or-more": "0 {unit} or more",
  "plan.network.1-to-operations": "1 to {mostOperations} operations",
  "plan.network.an-id-that-no-other-operation": "an id that no other operation has",
  "plan.network.an-order-in-which-no-operation": "an order in which no operation waits for itself",
  "plan.network.ids-of-operations-in-the-list": "ids of operations in the list",
  "plan.network.of-operation-is-a-time-is":
    "{key} of operation {operation} is {time}; a time is a number of {unit}, 0 or more.",
  "plan.network.operation-comes-after-but-there-is":
    "Operation {operation} comes after {before}, but there is no operation {before} in the list.",
  "plan.network.operations-are-too-many-for-one":
    "{operationsCount} operations are too many for one plan; {mostOperations} is the most.",
  "plan.network.operations-wait-for-each-other-in":
    'Operations {loop} wait for each other in a ring. Take one "after" out of it.',
  "plan.network.there-is-nothing-to-plan-yet": "There is nothing to plan yet: list at least one operation.",
  "plan.network.two-operations-have-the-id-give": "Two operations have the id {operation}. Give one of them another.",
  "plan.order-rules.add-a-dry-fit-with-all": "Add a dry fit with all parts there, and put it before that work.",
  "plan.order-rules.and-is-planned-before-any-dry":
    "{operation} ({what}) {doneBy} and is planned before any dry fit.{accepted}",
  "plan.order-rules.ask-whoever-does-it-and-write": "Ask whoever does it, and write down who that is.",
  "plan.order-rules.bending-cracks-it": "bending cracks it",
  "plan.order-rules.bends-the-frame": "bends the frame",
  "plan.order-rules.chips-and-clamps-mark-it": "chips and clamps mark it",
  "plan.order-rules.comes-after-the-paint-of": "{operation} ({what}) comes after the paint of {paint}; {why}.",
  "plan.order-rules.cuts-steel": "cuts steel",
  "plan.order-rules.drills-steel": "drills steel",
  "plan.order-rules.enter-the-wait-that-the-can": "Enter the wait that the can's own sheet names for your temperature.",
  "plan.order-rules.evidence-was-entered-for-but-there":
    "Evidence was entered for {operation}, but there is no such operation.",
  "plan.order-rules.has-no-wait-after-it-but": "{paint} ({what}) has no wait after it, but work follows.",
  "plan.order-rules.have-the-person-who-looked-enter":
    "Have the person who looked enter name, date and what was found.",
  "plan.order-rules.heat-burns-it": "heat burns it",
  "plan.order-rules.heats-the-frame": "heats the frame",
  "plan.order-rules.move-it-behind-the-dry-fit": "Move it behind the dry fit if that still can be done.",
  "plan.order-rules.move-it-behind-the-dry-fit-2":
    "Move it behind the dry fit, or have somebody accept the risk by name, with the date and what was measured instead.",
  "plan.order-rules.needs-the-shop-has-the-ability":
    "{operation} ({what}) needs {ability}; the shop has the ability, but not under that condition.",
  "plan.order-rules.needs-which-this-shop-does-not":
    "{operation} ({what}) needs {ability}, which this shop does not have.",
  "plan.order-rules.nothing-says-that-comes-before-the":
    "Nothing says that {operation} ({what}) comes before the paint of {paint}; done after it, {why}.",
  "plan.order-rules.put-before": "Put {operation} before {paint}.",
  "plan.order-rules.puts-paint-on": "puts paint on",
  "plan.order-rules.risk-accepted-by-on": " Risk accepted by {by} on {on}: {what}.",
  "plan.order-rules.send-it-out-borrow-the-tool": "Send it out, borrow the tool and the hands, or choose another way.",
  "plan.order-rules.the-evidence-for-opens-nothing-it":
    "The evidence for {operation} opens nothing: it must say who, when and what was seen.",
  "plan.order-rules.the-plan-has-no-dry-fit":
    "The plan has no dry fit. Everything is mounted once, bare, before steel is bent, heated, drilled, cut or painted.",
  "plan.plan-build.0-days-or-more": "0 days or more",
  "plan.plan-build.cannot-be-met": "cannot be met",
  "plan.plan-build.cut-at-closing-time": "cut at closing time",
  "plan.plan-build.find-more-cut-or-move-a": "Find {sessions} more, cut or move a task, or move a wait off the way.",
  "plan.plan-build.h-fits-no-session-of-h":
    "{operation} ({what}, {handsOnH} h) fits no session of {sessionH} h and is cut into {pieces}.",
  "plan.plan-build.is-a-dry-fit-it-cannot": "{operation} ({what}) is a dry fit; it cannot be left for later.",
  "plan.plan-build.is-needed-by-but-there-is": "{part} is needed by {neededBy}, but there is no such operation.",
  "plan.plan-build.is-not-met-by-the-best": "is not met by the best plan found",
  "plan.plan-build.it-may-come-that-much-later": "It may come that much later without moving the finish.",
  "plan.plan-build.leave-something-out-or-get-help": "Leave something out, or get help.",
  "plan.plan-build.must-be-ordered-days-before-the":
    "{part} must be ordered {orderByDay} days before the first session, or {neededBy} waits for it.",
  "plan.plan-build.none-of-the-ways-tried-is": "None of the ways tried is enough. ",
  "plan.plan-build.of": "{number} of {of}",
  "plan.plan-build.order-it-now-take-one-that": "Order it now, take one that is in the bin, or start later.",
  "plan.plan-build.say-where-it-can-be-put": "Say where it can be put down, or find one longer session.",
  "plan.plan-build.take-the-mark-off-it": "Take the mark off it.",
  "plan.plan-build.takes-days-to-come-give-0": "{part} takes {deliveryDays} days to come; give 0 days or more.",
  "plan.plan-build.the-deadline-of-days-with-h":
    "The deadline of {deadlineDays} days {proven} with {sessionH} h a session and {waitsDays} days of waits. It takes {onePieceDays} days with each task in one piece and {cutDays} with tasks cut at closing time; {criticalPathDays} if hands and hours were no limit.",
  "plan.plan-build.the-id-of-an-operation-in": "the id of an operation in the list",
  "plan.plan-build.the-plan-can-be-carried-out":
    "The plan {how} can be carried out, but it is not proven the earliest.",
  "plan.plan-build.the-work-takes-h-and-h":
    "The work takes {handsOnH} h and {hoursMax} h are given: over by {handsOnH2} h.",
  "plan.plan-build.the-work-takes-s-and-there":
    "The work takes {sessions} {sessionWord}s and there are {sessionsListed}. Waits count in clock hours from the end of the task.{intoSessions}",
  "plan.plan-build.too-late": " (too late)",
  "plan.plan-build.tried-in-days": "Tried, in days: {tried}.",
  "plan.plan-build.with": " With {what}: {sessions}.",
  "plan.plan-build.would-do-days": "Would do: {what}, {days} days. ",
  "plan.plan-length.piece-of": "{id} piece {piece} of {pieces}",
  "plan.schedule-sheet.builders-at-the-same-time": "Builders at the same time",
  "plan.schedule-sheet.clock-hours-from-its-end-before":
    "Clock hours from its end before anything that follows may start: paint, glue, oil, post.",
  "plan.schedule-sheet.comes-after": "Comes after",
  "plan.schedule-sheet.day-0-is-the-first-evening":
    "Day 0 is the first evening; tue, thu, sat is 0, 2, 4, 7, 9, 11 and so on.",
  "plan.schedule-sheet.dry-fit": "dry fit",
  "plan.schedule-sheet.each-works-on-an-operation-of": "Each works on an operation of his own.",
  "plan.schedule-sheet.earliest-start-of-each-operation-hours":
    "earliest start of each operation, hours from the start",
  "plan.schedule-sheet.evenings-as-day-numbers": "Evenings, as day numbers",
  "plan.schedule-sheet.hands-on-time": "Hands-on time",
  "plan.schedule-sheet.hours-each-operation-may-slip": "hours each operation may slip",
  "plan.schedule-sheet.hours-in-which-the-builder-can": "Hours in which the builder can work in one go.",
  "plan.schedule-sheet.hours-the-builder-is-busy-with": "Hours the builder is busy with it.",
  "plan.schedule-sheet.in-which-order-on-which-evenings": "In which order, on which evenings, and when is it finished?",
  "plan.schedule-sheet.latest-start-that-does-not-lengthen": "latest start that does not lengthen the path, hours",
  "plan.schedule-sheet.length-of-an-evening": "Length of an evening",
  "plan.schedule-sheet.length-of-the-plain-critical-path": "length of the plain critical path, hours",
  "plan.schedule-sheet.numbers-of-the-operations-that-must": "Numbers of the operations that must be finished before.",
  "plan.schedule-sheet.numbers-of-the-operations-without-float":
    "numbers of the operations without float, first to last",
  "plan.schedule-sheet.prime-and-colour": "prime and colour",
  "plan.schedule-sheet.strip-and-bag": "strip and bag",
  "plan.schedule-sheet.sum-of-the-hands-on-times": "sum of the hands-on times, hours",
  "plan.schedule-sheet.sum-of-the-waits-hours": "sum of the waits, hours",
  "plan.schedule-sheet.the-plan-on-the-evenings-given":
    "the plan on the evenings given, with any number of builders: possible or not, finish in clock hours, evening number, hours into it, days, whether proven the earliest, and the start of every operation",
  "plan.schedule-sheet.times-in-hours-the-critical-path":
    "Times in hours. The critical path takes unlimited hands and works round the clock; a cure holds up every successor, and the cure of an operation that nothing follows does not count. The evening plan takes the builders and evenings given: each operation in one piece inside one evening, also one with no hands-on time. Clock zero is the start of the first evening; elapsed days are clock hours / 24. The plan shown is one of those with the earliest finish where proven_optimal is true.",
  "plan.schedule-sheet.wait-after-it": "Wait after it",
  "plan.schedule-sheet.what-is-done": "What is done",
  "plan.schedule.0-or-more-day-0-is": "0 or more; day 0 is the first evening",
  "plan.schedule.a-whole-number-from-1-to": "a whole number from 1 to {mostBuilders}",
  "plan.schedule.an-evening-of-h-cannot-be":
    "An evening of {length} h cannot be planned; give over 0 and up to 24 hours.",
  "plan.schedule.at-least-one-day-number": "at least one day number",
  "plan.schedule.builders-cannot-be-planned-give-a":
    "{builders} builders cannot be planned; give a whole number from 1 to {mostBuilders}.",
  "plan.schedule.evening-day-starts-before-evening-day":
    "Evening {evening} (day {day}) starts before evening {eveningBefore} (day {previous}, {length} h) is over. List the days in rising order, each once.",
  "plan.schedule.evening-is-on-day-days-are":
    "Evening {evening} is on day {day}; days are counted from 0, the first evening.",
  "plan.schedule.no-evening-is-listed-give-the":
    "No evening is listed. Give the days on which the workshop is open; day 0 is the first evening.",
  "plan.schedule.no-plan-found-one-may-still": " (no plan found; one may still exist)",
  "plan.schedule.nothing-follows-operation-so-its-h":
    "Nothing follows operation {ids}, so its {cure} h of cure are not in the finish. Leave it alone that long all the same.",
  "plan.schedule.operation-takes-h-and-fits-into":
    "Operation {ids} takes {handsOnH} h and fits into no evening of {lengthH} h. Cut it into pieces that can be put down, or find one longer session.",
  "plan.schedule.rising-days-each-evening-after-the": "rising days, each evening after the end of the one before",
  "plan.schedule.the-first-evening-is-on-day":
    "The first evening is on day {firstDay}. The clock starts with that evening, so all hours count from there.",
  "plan.schedule.the-work-does-not-end-on":
    "The work does not end on the {listed} evenings listed{certain}. If they go on in the same rhythm, evening {needed} sees the end: {needed2} more.",
  "plan.schedule.this-plan-can-be-carried-out":
    "This plan can be carried out, but it is not proven the earliest. None can end before clock hour {lowerBoundH}.",
  "plan.shop-calendar.a-date-as-yyyy-mm-dd": "a date as YYYY-MM-DD",
  "plan.shop-calendar.a-session-of-h-cannot-be": "A session of {sessionH} h cannot be planned.",
  "plan.shop-calendar.at-least-one-day": "at least one day",
  "plan.shop-calendar.at-least-one-session-of-h": "at least one session of {sessionH} h",
  "plan.shop-calendar.at-least-one-week-day": "at least one week day",
  "plan.shop-calendar.h-a-week-hold-no-whole": "{hoursPerWeek} h a week hold no whole session of {sessionH} h.",
  "plan.shop-calendar.is-a-but-the-first-session":
    "{startDate} is a {dateDay}, but the first session is said to be on a {startDay}.",
  "plan.shop-calendar.is-no-date-write-it-as": "{startDate} is no date. Write it as YYYY-MM-DD.",
  "plan.shop-calendar.no-session-is-listed": "No session is listed.",
  "plan.shop-calendar.over-0-and-up-to-24": "over 0 and up to 24 hours",
  "plan.shop-calendar.rising-day-numbers-each-once": "rising day numbers, each once",
  "plan.shop-calendar.session-is-on-day-list-the":
    "Session {session} is on day {day}; list the days in rising order, each once.",
  "plan.shop-calendar.the-first-session-is-on-a": "The first session is on a {startDay}, but work goes on {used}.",
  "plan.shop-calendar.the-shop-has-no-open-day": "The shop has no open day.",
  "plan.swaps-that-fit.an-id-that-no-other-swap": "an id that no other swap has",
  "plan.swaps-that-fit.ask-these-prices-first-until-then":
    "Ask these prices first: {priceNotKnown}. Until then no swap can be judged.",
  "plan.swaps-that-fit.brings-in-which-is-in-the": "{what} brings in {line}, which is in the list already.",
  "plan.swaps-that-fit.budget-is-give-0-or-more": "budget is {budget}; give 0 or more.",
  "plan.swaps-that-fit.ids-of-lines-in-the-list": "ids of lines in the list",
  "plan.swaps-that-fit.lines-that-are-not-in-the": "lines that are not in the list",
  "plan.swaps-that-fit.swaps-are-too-many-to-try":
    "{swapsCount} swaps are too many to try all sets of; {mostSwaps} is the most.",
  "plan.swaps-that-fit.takes-out-which-is-not-in": "{what} takes out {id}, which is not in the list.",
  "plan.swaps-that-fit.the-loss-of-is-give-0": "The loss of {swap} is {loss}; give 0 or more.",
  "plan.swaps-that-fit.two-swaps-have-the-id": "Two swaps have the id {swap}.",
  "plan.swaps-that-fit.up-to": "up to {mostSwaps}",
  "plan.ways-back.left-for-later": "{what} left for later",
  "plan.ways-back.sessions-of-h": "sessions of {sessionH} h",
} as const;
