// Package understand reads a short reply and says what it means and how sure it is.
//
// The way of a text: Normal folds spelling, tokens are cut, every word is looked
// up in the tables of lexicon/ (six languages, one row a sense) and becomes a
// sign; signs are cut into clauses; each clause is asked who, when, whether it
// is denied, doubted, planned or asked; what is left standing becomes codes.
// Dangers are read first, in any language.
//
// Where to look: normal.go and token.go spell and cut; lookup.go, misspelt.go and near.go find
// words; sign.go and phrase.go make signs, recast.go and homonym.go settle what a word means
// in its company; clause.go and unmarked.go part clauses, frame.go and bind.go give them mood and
// denial; account.go takes them one by one: danger.go, state.go and value.go read what is told,
// act.go and verb.go what was done, standing.go and tensed.go whether it was; have.go and tally.go
// add up what is at hand; delay.go, inquiry.go and answers.go read what is put off, asked and
// answered; settle.go makes codes.
//
// It does not decide what to do about a meaning, it keeps no state beyond the
// question that was asked, and it never guesses between hot and cold: when a
// fact is not plain it says so, and offers its best guess as a choice.
//
// Source of every word in lexicon/: from memory, no native speaker has read
// them yet. Rules without another source beside them are the labelling rules the
// group agreed on ("common practice, no source").
package understand
