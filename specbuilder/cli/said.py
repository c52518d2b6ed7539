"""``accept`` and ``ask``: what a customer gives their word for, and who finds out what nobody knows yet."""

from __future__ import annotations

from argparse import Namespace
from dataclasses import replace
from datetime import datetime

from specbuilder.model.catalogue import Catalogue
from specbuilder.model.edits import Accept, CloseQuestion, Edit, PutQuestion, Withdraw
from specbuilder.model.ids import RuleId
from specbuilder.model.kinds import Level, Verdict
from specbuilder.model.spec import OpenQuestion, Spec
from specbuilder.session.evaluate import evaluate
from specbuilder.session.life import SIGNING
from specbuilder.storage.faults import quotable
from specbuilder.wording.acceptance import accept_words
from specbuilder.wording.lines import no_such_question, several_questions
from specbuilder.wording.why import cannot_accept

from .answers import Answer
from .change import Meaning, Target, changed
from .open_things import asked_text
from .recording import typed_day, typed_text
from .things import Unclear


def accept(target: Target, arguments: Namespace, now: datetime) -> Answer:
    """Accepts findings in writing, in the words used, or takes an acceptance back.

    Raises:
        StopError: one of them cannot be accepted; nothing was changed.
        SpecFaultsError, DiskError: the file cannot be used, read or written.
    """
    by = "" if arguments.back else typed_text("--by", arguments.by)
    return changed(target, arguments.findings, lambda catalogue: _accepting(catalogue, by, f"{now:%Y-%m-%d %H:%M}"))


def ask(target: Target, arguments: Namespace, now: datetime) -> Answer:
    """Puts an open question with the person who finds out and by when, or closes it as answered.

    Raises:
        StopError: the date is none, or what it stops; nothing was changed.
        SpecFaultsError, DiskError: the file cannot be used, read or written.
    """
    text = typed_text("WORDS", " ".join(arguments.words))
    if arguments.answered:
        return changed(target, (text,), lambda catalogue: lambda spec, words: _closing(catalogue, spec, words))
    question = OpenQuestion(
        text=text,
        owner=typed_text("--who", arguments.who) if arguments.who is not None else "",
        due=typed_day("--due", arguments.due, f"{now:%Y-%m-%d}") if arguments.due is not None else "",
        stops=typed_text("--stops", arguments.stops) if arguments.stops is not None else "",
    )
    return changed(target, (text,), lambda catalogue: _asking(catalogue, question))


def _asking(catalogue: Catalogue, question: OpenQuestion) -> Meaning:
    """How a question is put that stops the signing, a step of the build, or nothing."""
    known = (SIGNING, *catalogue.work)
    stops = next((each for each in known if each.casefold() == question.stops.casefold()), None)

    def meaning(_spec: Spec, words: str) -> Edit | Unclear:
        if question.stops and stops is None:
            return Unclear(f'--stops: "{quotable(question.stops)}" is nothing it can stop: use {", ".join(known)}.')
        return PutQuestion(question=replace(question, text=asked_text(catalogue, words) or words, stops=stops or ""))

    return meaning


def _closing(catalogue: Catalogue, spec: Spec, words: str) -> Edit | Unclear:
    """The question that is meant: by what stands in brackets, by its words, or by the first of them."""
    wanted = (asked_text(catalogue, words) or words).casefold()
    texts = [question.text for question in spec.questions]
    for fits in (str.__eq__, str.startswith):
        found = [text for text in texts if fits(text.casefold(), wanted)]
        if len(found) == 1:
            return CloseQuestion(text=found[0])
        if found:
            return Unclear(several_questions(words))
    return Unclear(no_such_question(words))


def _accepting(catalogue: Catalogue, by: str, at: str) -> Meaning:
    """How a rule that was typed is accepted; without a name an acceptance is taken back."""

    def meaning(spec: Spec, text: str) -> Edit | Unclear:
        rule = RuleId(text.strip("[]"))
        if not by:
            return Withdraw(rule=rule)
        report = evaluate(catalogue, spec)
        found = next((finding for finding in report.findings if finding.rule == rule), None)
        if found is None:
            return Unclear(f'"{text[:60]}" is no finding of this spec: check names each in brackets.')
        if found.level is Level.STOP or found.verdict is not Verdict.BROKEN:
            return Unclear(f"{text[:60]}: {cannot_accept()}")
        return Accept(rule=rule, words=accept_words(catalogue, report, rule), by=by, at=at)

    return meaning
