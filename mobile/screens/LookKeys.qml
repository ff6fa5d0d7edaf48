// How this screen looks and sounds, in its person's words; remembered by this device.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Grid {
    id: looks

    /// What is changed on the walk, without what is chosen once.
    property bool brief: false
    readonly property real half: (width - spacing) / 2

    function letters(scale: real): string {
        return scale.toLocaleString(Qt.locale(), "f", 1);
    }

    columns: 2
    spacing: Tokens.margin

    NamedKeys {
        width: looks.half
        caption: qsTr("This screen")
        named: "theme"
        names: [qsTr("Light"), qsTr("Dark")]
        now: Tokens.dark ? 1 : 0
        columns: 2
        onChosen: place => Tokens.dark = place === 1
    }

    NamedKeys {
        width: looks.half
        caption: qsTr("Hand on the keys")
        named: "hand"
        names: [qsTr("Left"), qsTr("Right")]
        now: Tokens.leftHanded ? 0 : 1
        columns: 2
        onChosen: place => Tokens.leftHanded = place === 0
    }

    NamedKeys {
        visible: !looks.brief
        width: looks.half
        caption: qsTr("Size of letters")
        named: "letters"
        names: [looks.letters(1.0), looks.letters(1.2), looks.letters(1.4), looks.letters(1.7)]
        now: names.indexOf(looks.letters(Tokens.textScale))
        columns: 4
        onChosen: place => Tokens.textScale = [1.0, 1.2, 1.4, 1.7][place]
    }

    NamedKeys {
        visible: !looks.brief
        width: looks.half
        caption: qsTr("Contrast")
        named: "contrast"
        names: [qsTr("As drawn"), qsTr("More")]
        now: Tokens.moreContrast ? 1 : 0
        columns: 2
        onChosen: place => Tokens.moreContrast = place === 1
    }

    NamedKeys {
        width: looks.half
        caption: qsTr("Motion")
        named: "motion"
        names: [qsTr("Full"), qsTr("Less")]
        now: Tokens.lessMotion ? 1 : 0
        columns: 2
        onChosen: place => Tokens.lessMotion = place === 1
    }

    NamedKeys {
        visible: Tokens.soundIsThere
        width: looks.half
        caption: qsTr("Sounds")
        named: "sound"
        names: [qsTr("On"), qsTr("Off")]
        now: Tokens.sounds ? 0 : 1
        columns: 2
        onChosen: place => Tokens.sounds = place === 0
    }
}
