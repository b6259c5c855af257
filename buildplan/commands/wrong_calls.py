"""A call that cannot be carried out: one message in the reader's language that says where it is
wrong and what would be right, and none in the words of the library that reads calls."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from typing import Any

import typer
from typer.core import TyperGroup

from buildplan.commands.aside import aside
from buildplan.commands.wrong_options import wrong_value
from buildplan.language.messages import Message, message
from buildplan.language.voice import LOCALES, Voice

# the option that tells the reader's language, and the variable of the environment that does
LANGUAGE, LANGUAGE_VARIABLE = "--language", "BUILDPLAN_LANGUAGE"


class Commands(TyperGroup):
    """All commands. A wrong call is told in the language that it asks for, wherever in the call it
    does so, for nothing is carried out before the whole call has been read."""

    def main(self, args: Sequence[str] | None = None, *others: Any, **extra: Any) -> Any:
        given = list(sys.argv[1:] if args is None else args)
        reader = extra.get("obj")
        voice = Voice(_language_asked(given))
        if reader is not None:
            reader.voice = voice
        try:
            status = super().main(given, *others, **{**extra, "standalone_mode": False})
        except typer.TyperException as error:
            if type(error).__name__ == "NoArgsIsHelpError":
                aside(error.format_message())
            else:
                aside(_in_words(error, self, given, getattr(reader, "voice", voice)))
            sys.exit(error.exit_code)
        except typer.Abort:  # Ctrl-C where something was asked
            sys.exit(130)
        except RuntimeError as error:  # so Python 3.11 wraps what comes while a class is made
            if isinstance(error.__cause__, KeyboardInterrupt):
                sys.exit(130)
            if isinstance(error.__cause__, SystemExit):
                raise error.__cause__ from None
            raise
        sys.exit(status if isinstance(status, int) else 0)


def _language_asked(call: Sequence[str]) -> str:
    """The language that a call asks for, else the environment; English where it is none of ours."""
    asked = os.environ.get(LANGUAGE_VARIABLE, "")
    for word, after in zip(call, (*call[1:], ""), strict=False):
        name, equals, value = word.partition("=")
        if name == LANGUAGE:
            asked = value if equals else after
    return asked if asked in LOCALES else Voice().language


def _in_words(error: Any, commands: TyperGroup, call: Sequence[str], voice: Voice) -> str:
    """What is wrong with a call. Where a command itself refuses it, the words are ours already."""
    context = getattr(error, "ctx", None)
    command = context.command if context is not None else _command_named(commands, call)
    name = "buildplan" if command is commands else f"buildplan {command.name}"
    told = _told(error, commands, command, name, call)
    if told is None:
        return str(error.message)
    return f"{voice.tell(told)}\n{voice.say('{command} says more', command=f'{name} --help')}"


def _command_named(commands: TyperGroup, call: Sequence[str]) -> Any:
    return next((commands.commands[word] for word in call if word in commands.commands), commands)


def _told(
    error: Any, commands: TyperGroup, command: Any, name: str, call: Sequence[str]
) -> Message | None:
    """What the library that reads calls found, by what it is called there; None where the words of
    an error are our own."""
    match type(error).__name__:
        case "NoSuchOption":
            return _no_such_option(error.option_name, commands, command, call)
        case "BadOptionUsage":
            return _no_such_use(error.option_name, command)
        case "MissingParameter":
            right = _right_call(command, name)
            return message(
                "{what} is missing; write {right}", what=_called(error.param), right=right
            )
        case "BadParameter" if error.param is not None:
            return wrong_value(error, _place(error.param, call))
        case "UsageError" if command is commands:
            return _no_such_command(_first_word(call), commands)
        case "UsageError":
            extra = error.message.partition("(s) (")[2].removesuffix(")")
            return message(
                "{extra} is too much; write {right}", extra=extra, right=_right_call(command, name)
            )
    return None


def _no_such_option(
    option: str, commands: TyperGroup, command: Any, call: Sequence[str]
) -> Message:
    from buildplan.source.mistake import nearest

    with_it = [
        one
        for one in commands.commands.values()
        if any(option in known.opts for known in one.params)
    ]
    if command is commands and with_it:
        given = " ".join(call[call.index(option) : call.index(option) + 2])
        example = f"{_right_call(with_it[0], f'buildplan {with_it[0].name}')} {given}"
        return message(
            "{option} goes after the command, as in {example}", option=option, example=example
        )
    guess = nearest(option, [name for known in command.params for name in known.opts])
    if guess is None:
        return message("there is no option {option}", option=option)
    return message("there is no option {option}; did you mean {guess}?", option=option, guess=guess)


def _no_such_use(option: str, command: Any) -> Message:
    known = next((one for one in command.params if option in one.opts), None)
    if getattr(known, "is_flag", False):
        return message("{option} takes no value: write it alone", option=option)
    return message("{option} needs a value after it", option=option)


def _no_such_command(name: str, commands: TyperGroup) -> Message:
    from buildplan.source.mistake import nearest

    guess = nearest(name, commands.commands)
    if guess is None:
        return message("there is no command {name}", name=name)
    return message(
        "there is no command {name}; did you mean {guess}?", name=name, guess=f"buildplan {guess}"
    )


def _first_word(call: Sequence[str]) -> str:
    return next((word for word in call if not word.startswith("-")), "")


def _place(parameter: Any, call: Sequence[str]) -> str:
    """Where a value stands: in the call, or in the environment."""
    called = _called(parameter)
    from_environment = called == LANGUAGE and not any(word.startswith(LANGUAGE) for word in call)
    return LANGUAGE_VARIABLE if from_environment else called


def _called(parameter: Any) -> str:
    """An option as it is written, an argument as the help has it."""
    if parameter.param_type_name == "option":
        return str(parameter.opts[0])
    return str(parameter.metavar or parameter.name).upper()


def _right_call(command: Any, name: str) -> str:
    """The shortest call of a command that has all that it needs."""
    needed = [one for one in command.params if one.required]
    words = [
        f"{_called(one)} {one.name.upper()}" if one.param_type_name == "option" else _called(one)
        for one in needed
    ]
    return " ".join([name, *words])
