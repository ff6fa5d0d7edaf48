// The pad of Walk under the thumb: what the chosen post or part is asked, and the acts at its foot.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Rectangle {
    id: pad

    required property WalkModel walk
    property bool portrait: false
    property bool skipping: false
    property bool hands: false
    property bool gauge: false
    readonly property bool finds: walk.pad === WalkModel.FindingPad && !skipping && !hands && !gauge
    readonly property bool aside: skipping || hands || gauge || finds
    property int skipTo: -1
    readonly property bool nextIsScrew: walk.pad === WalkModel.TorquePad && walk.torque.nextScrewWords !== ""
    readonly property bool leftHanded: Tokens.leftHanded
    readonly property bool atPost: walk.pad === WalkModel.PostPad
    readonly property bool atBay: walk.pad === WalkModel.BayPad
    readonly property bool atPart: !atPost && !atBay && !aside
    readonly property real side: Tokens.margin
    readonly property real inner: width - side * 2
    readonly property real keysWidth: portrait ? Math.min(Tokens.padWidth - Tokens.margin * 2, inner / 2) : inner
    readonly property real besideWidth: portrait ? inner - keysWidth - Tokens.margin : inner
    readonly property real keysX: portrait && !leftHanded ? width - side - keysWidth : side
    readonly property real besideX: portrait && leftHanded ? width - side - besideWidth : side
    readonly property real topSpace: Tokens.inset

    signal closeWanted
    signal handsLeft
    signal handsWanted
    signal gaugeLeft
    signal skipWanted
    signal skipLeft
    signal skipBecause(reason: int)

    /// Rain or a palm: no key answers for a moment.
    function rest() {
        resting.restart();
    }

    color: Tokens.shade

    Timer {
        id: resting

        interval: Tokens.palmRestTime
    }

    MouseArea {
        objectName: "restingPad"
        z: 1
        anchors.fill: parent
        visible: resting.running
    }

    MadeOnce {
        shown: pad.atPost && !pad.aside

        PostKeys {
            x: pad.side
            y: pad.topSpace
            width: pad.inner
            height: pad.height - pad.topSpace * 2
            wide: pad.portrait
            writes: pad.walk.writable
            counts: pad.walk.runCounts
            post: qsTr("Post %1").arg(pad.walk.postLabel)
            about: pad.walk.postAbout
            asLastTime: pad.walk.asLastTimeOffered
            pushedMeans: pad.walk.pushedMeans
            lookAgain: pad.walk.whyNotAsLastTime
            lookAgainMeans: pad.walk.lookAgainPart
            before: pad.walk.backPostLabel === "" ? "" : qsTr("Post %1").arg(pad.walk.backPostLabel)
            after: pad.walk.nextPostLabel === "" ? "" : qsTr("Post %1").arg(pad.walk.nextPostLabel)
            undoes: pad.walk.undoWords
            lastGrades: pad.walk.postLastGrades
            coating: pad.walk.coatingOffered
            torque: pad.walk.torqueOffered
            wall: pad.walk.wallOffered
            onPushed: pad.walk.asLastTime(true)
            onLooked: pad.walk.asLastTime(false)
            onLookedAgain: pad.walk.lookAgain()
            onPadChosen: which => pad.walk.openPad(which)
            onBackward: pad.walk.stepPost(-1)
            onForward: pad.walk.stepPost(1)
            onSkip: pad.skipWanted()
            onUndo: pad.walk.undo()
        }
    }

    MadeOnce {
        shown: pad.skipping

        SkipKeys {
            x: pad.side
            y: pad.topSpace
            width: pad.inner
            height: pad.height - pad.topSpace * 2
            wide: pad.portrait
            stretch: pad.skipTo < 0 ? qsTr("Post %1").arg(pad.walk.postLabel) : qsTr("Posts %1 to %2").arg(pad.walk.postLabel).arg(pad.walk.postLabelAt(pad.skipTo))
            onLeave: pad.skipLeft()
            onBecause: reason => pad.skipBecause(reason)
        }
    }

    MadeOnce {
        shown: pad.hands

        HandKeys {
            x: pad.side
            y: pad.topSpace
            width: pad.inner
            height: pad.height - pad.topSpace - Tokens.margin
            walk: pad.walk
            wide: pad.portrait
            onLeave: pad.handsLeft()
            onCloseWanted: pad.closeWanted()
        }
    }

    MadeOnce {
        shown: pad.gauge

        GaugeKeys {
            x: pad.side
            y: pad.topSpace
            width: pad.inner
            height: pad.height - pad.topSpace - Tokens.margin
            walk: pad.walk
            wide: pad.portrait
            onLeave: pad.gaugeLeft()
            onHandsWanted: pad.handsWanted()
        }
    }

    MadeOnce {
        shown: pad.finds

        FindingKeys {
            visible: pad.finds
            x: pad.side
            y: pad.topSpace
            width: pad.inner
            height: pad.height - pad.topSpace - Tokens.margin
            finding: pad.walk.finding
            wide: pad.portrait
            onLeave: pad.walk.leaveFinding()
        }
    }

    MadeOnce {
        shown: pad.atBay && !pad.aside

        BayKeys {
            x: pad.side
            y: pad.topSpace
            width: pad.inner
            height: pad.height - pad.topSpace - Tokens.margin
            walk: pad.walk
            wide: pad.portrait
        }
    }

    PadChoices {
        id: choices

        visible: pad.atPart && pad.walk.writable
        x: pad.besideX
        y: pad.topSpace
        width: pad.besideWidth
        height: pad.portrait ? Tokens.mainActHeight : Tokens.padChoiceHeight
        textSize: pad.portrait ? Tokens.bodyText : Tokens.smallText
        pad: pad.walk.pad
        grade: pad.walk.gradeNow
        coating: pad.walk.coatingOffered
        torque: pad.walk.torqueOffered
        wall: pad.walk.wallOffered
        onChosen: which => pad.walk.openPad(which)
    }

    Item {
        id: under

        readonly property bool up: pad.portrait && pad.walk.writable && pad.walk.pad === WalkModel.CoatingPad

        x: pad.besideX
        y: choices.y + choices.height + Tokens.gap
        width: pad.besideWidth
        height: keys.item ? keys.item.height : 0

        MadeOnce {
            id: keys

            shown: under.up && !pad.aside

            ProbeKeys {
                width: pad.besideWidth
                walk: pad.walk
            }
        }
    }

    MadeOnce {
        shown: pad.atPart && pad.walk.writable

        PartKeys {
            walk: pad.walk
            x: pad.keysX
            y: pad.portrait ? pad.topSpace : choices.y + choices.height + Tokens.inset
            width: pad.keysWidth
            height: (pad.portrait ? pad.height - pad.topSpace : acts.y - Tokens.inset) - y
        }
    }

    ActKeys {
        id: acts

        visible: pad.atPart
        x: pad.besideX
        y: pad.portrait ? (under.up ? under.y + under.height : choices.y + choices.height) + Tokens.gap : pad.height - Tokens.mainActHeight - Tokens.margin
        width: pad.besideWidth
        height: pad.portrait ? pad.height - pad.topSpace - y : Tokens.mainActHeight
        stacked: pad.portrait
        writes: pad.walk.writable
        undoes: pad.walk.undoWords
        main: pad.nextIsScrew ? qsTr("Next screw") : qsTr("Next part")
        mainMeans: pad.nextIsScrew ? pad.walk.torque.nextScrewWords : pad.walk.nextWords
        after: pad.walk.nextPostLabel === "" ? "" : qsTr("Post %1").arg(pad.walk.nextPostLabel)
        onUndo: pad.walk.undo()
        onAct: pad.nextIsScrew ? pad.walk.torque.nextScrew() : pad.walk.nextPart()
        onForward: pad.walk.stepPost(1)
    }

    Rectangle {
        visible: !pad.portrait
        x: pad.leftHanded ? parent.width - width : 0
        width: Tokens.keyEdge
        height: parent.height
        color: Tokens.edge
    }
}
