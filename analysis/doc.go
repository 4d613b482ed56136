// Package analysis takes a log to what to start from. Run is its only door: it hands what
// each room returned to the next and puts the results together; nothing is computed after
// it. From the log to a start the way is:
//
//  1. Settle what is asked: a flag, else the kitchen's own Targets sheet, else what is
//     assumed; and the batch, which is the middle of those logged (settings.go).
//  2. Take the trials that are used, and give each the percent of every thickener, salt or
//     sugar that the log varied, as if it were a setting (surface).
//  3. Choose the variables that the trials vary and say often enough, of fat, emulsifier
//     and blend HLB, and place every trial in them; set the others aside with the reason
//     (surface).
//  4. See which outcomes the trials placed there tell of: these are judged, and the chain
//     has a link for each. Say of every trial whether it came out, did not split and meets
//     each target: yes, no, or not known (works).
//  5. Put beside the mix what else varied: settings, which emulsifiers, which fat, who
//     made it. Trials of one formula, made the same way, are one group (surface).
//  6. Stop short of a start if a question is open on which the recipes rest, or if the log
//     has a fat, emulsifier or HLB that too few trials tell (logged); if nothing worked, or
//     if fewer than eight trials can be compared (belief).
//  7. Gather for each outcome the trials that reached it: a clogged foam has no hold. Draw
//     what is believed of its line from these, the prior and the trade's signs, a yes/no
//     line averaged over how steep it may be (partly a third answer where the log tells it), and join the lines into a chain: came out,
//     did not split, holds, drains little (belief).
//  8. Judge the trials apart from that, by maximum likelihood: fits and residuals (fits);
//     days, cooks, lots, settings and the order beside them (groups); repeats, and each
//     trial foreseen from the others (judging).
//  9. Lay out, for every way that trials were made in, the mixes inside what was tried that
//     hardly clog and keep the kitchen's limits; go on with the way that has the surest
//     mix (answers).
//  10. Climb to the surest mix, stand in the middle of those nearly as good or keep one that
//     was made twice and always worked, and go through mixes that work to the richest;
//     weigh both on the scale in the proportions of a trial near by, and ask of the
//     rounded grams how likely they work, how they fail, how exactly to weigh, what each
//     trial left out would change, and what a prior of half or twice the width would
//     say (answers, weigh).
//  11. From the surest start look around: the best chance at each fat percent and what ends
//     it, the maps, what moves the hold and where it peaks, what another emulsifier would
//     do, and the formulas that somebody asked about (answers).
//  12. Name the next trials: the start until it was made twice, the best trial again, and
//     those expected to do most to the surest's chance and the richest's fat; without a
//     start, one step away from what stopped most trials (next).
//  13. Say what these trials cannot tell (judging) and which cautions apply, and copy what
//     was read (logged).
//
// Many weeks (Trend) go the same way with all of them taken for one, then:
//
//  1. Put the trials in the order of time: by dates, else by names, else by rows (history).
//  2. Fit one line for all weeks, and ask what moves it, where each week's optimum is, and
//     what cannot be told apart (trend).
//
// Run asks trend only whether weeks or lots matter; if they do, the trials that starts rest
// on count as the latest week and lots would have given them (asof.go).
//
// The rooms stand in this order: works, surface, logged, belief, fits, groups, judging,
// weigh, answers, next, history, trend. Each is given values and returns one, and imports
// only those before it. Below them are leaves that know numbers only (latent, likeliest,
// regress, leaning, posterior, region, nested, series) and formula, which knows grams.
package analysis
