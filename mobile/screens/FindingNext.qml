// What is next of a finding, one touch; where the day to mend it by moves later, why.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Column {
    id: next

    required property FindingsModel findings
    readonly property int weekDays: 7
    readonly property int monthDays: 30

    spacing: Tokens.gap

    NamedKeys {
        readonly property list<int> steps: [1, 2, 3, 3, 4, 5]

        width: parent.width
        caption: qsTr("What is next?")
        named: "next"
        names: [qsTr("Watch"), qsTr("Measure next visit"), qsTr("Mend in a week"), qsTr("Mend in a month"), qsTr("Order"), qsTr("Ask an engineer")]
        now: next.findings.nextStep === 3 ? -1 : next.findings.nextStep < 3 ? next.findings.nextStep - 1 : next.findings.nextStep
        columns: 3
        textSize: Tokens.smallText
        captionSize: Tokens.smallText
        onChosen: place => next.findings.setNext(steps[place], place === 2 ? next.weekDays : next.monthDays)
    }

    NamedKeys {
        visible: next.findings.asksWhyLater
        width: parent.width
        caption: qsTr("That is later than agreed. Why? Both days stay.")
        named: "later"
        names: [qsTr("Money"), qsTr("Part"), qsTr("Access"), qsTr("Weather"), qsTr("Engineer"), qsTr("Other")]
        columns: 3
        textSize: Tokens.smallText
        captionSize: Tokens.smallText
        onChosen: place => next.findings.putOff(place + 1)
    }
}
