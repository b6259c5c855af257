"""The practice piece in pictures: how it lies or comes out, with the names of its joints."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.floor_plans import plan_of_every_joint
from buildplan.booklet.common.progress import BuildProgress
from buildplan.document.blocks import Shown
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.labelled import labelled_picture, named_joints
from buildplan.framework.chain_roles import Layer
from buildplan.sequence.model import Kind

# The labelled picture is so high, more for each joint, and at most so high.
LEAST_LABELLED_PT, A_JOINT_PT, LABELLED_PT = 120.0, 3.5, 190.0
PLAN_SIZE, FINISHED_PT = (200.0, 170.0), 170.0


def pictured(own: Book) -> list[Flowable]:
    """The piece with its joints named: of chains that are braced, as they lie when they are laid;
    of others, as it comes out."""
    voice, framework, shape = own.voice, own.framework, own.shape
    name, corner = voice.say("Practice piece"), CAMERAS["corner"]
    laid = next((step for step in own.steps if step.kind is Kind.LAY), None)
    if laid is None or not framework.braces:
        size = min(LABELLED_PT, LEAST_LABELLED_PT + A_JOINT_PT * len(framework.joints))
        joints = framework.joints
        named = labelled_picture(
            framework, shape, corner, size, joints, voice, name, patterns=own.patterns
        )
        return [Shown(named)]
    return [Shown(plan_of_every_joint(own, Views(BuildProgress(own), {}), laid, *PLAN_SIZE))]


def comes_out(own: Book) -> list[Flowable]:
    """How a piece comes out of which the first picture shows how it is laid; the ends of its front
    chains are named."""
    if not own.framework.braces:
        return []
    front = [long.chain for long in own.framework.chains if long.layer is not Layer.BACK]
    ends = [joint for chain in front for joint in (chain.joints[0], chain.joints[-1])]
    alt = own.voice.say(
        "{piece} with the labels of its joints.", piece=own.voice.say("Practice piece")
    )
    corner = CAMERAS["corner"]
    made = named_joints(
        own.framework, own.shape, corner, FINISHED_PT, ends, alt, patterns=own.patterns
    )
    return [Shown(made)]
