// What stands over the drawing while something is chosen on it: the note of the part, its coating, the bay, or a gauge's check.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: note

    required property WalkModel walk
    property bool portrait: false
    property bool skipping: false
    readonly property bool checking: note.walk.check.what !== GaugeCheck.Nothing
    readonly property bool coating: note.walk.pad === WalkModel.CoatingPad && !checking
    readonly property bool bay: note.walk.pad === WalkModel.BayPad && !checking
    readonly property bool up: checking || (note.walk.pad !== WalkModel.PostPad && !note.skipping)
    readonly property Item shown: checking ? checks.item : coating ? coatings.item : bay ? bays.item : parts.item

    visible: up
    height: shown ? shown.height : 0

    // What is under the note is not touched through it.
    MouseArea {
        anchors.fill: parent
    }

    MadeOnce {
        id: coatings

        shown: note.up && note.coating

        CoatingNote {
            width: note.width
            walk: note.walk
            asksUnder: !note.portrait && note.walk.writable
        }
    }

    MadeOnce {
        id: parts

        shown: note.up && !note.coating && !note.bay && !note.checking

        PartNote {
            width: note.width
            walk: note.walk
        }
    }

    MadeOnce {
        id: bays

        shown: note.up && note.bay

        BayNote {
            width: note.width
            walk: note.walk
        }
    }

    MadeOnce {
        id: checks

        shown: note.checking

        CheckNote {
            width: note.width
            check: note.walk.check
        }
    }
}
