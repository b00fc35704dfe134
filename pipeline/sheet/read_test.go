package sheet

import (
	"bytes"
	"fmt"
	"slices"
	"sort"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
)

// sheetCase is one sheet as a volunteer might send it, and how a person would
// read it. Each is run as text and as a workbook of the same cells.
type sheetCase struct {
	name    string
	file    string // path without ending
	text    string // cells divided by bars
	o       Options
	columns string // meanings in order of the columns, "other" left out as "-"
	run     string // course, date and session of the first row
	rows    string // rows that stand for finishers
	asks    string // kinds of the questions
	kind    string
	only    string // "text": no workbook of these cells
}

var sheetCases = []sheetCase{
	{name: "columns under one another, and times with a comma", file: "x", only: "text",
		text:    "Kiesgrube Lauf 5 km  25.2.2026\nPl.  Name             Zeit   AK   Verein\n  1  LEE Jo           18,20  M30  Lauftreff\n  2  ROE Ann          18,31  W35  TSV Hang\n  3  FIELD Sam        19,02  M35\n  4  GALE Bo          19,10  W30  TSV Hang\n",
		columns: "position name time age-group club", run: "kiesgrube 2026-02-25", rows: "3-6"},
	{name: "a line that says when it was recorded, and the course in the file's name", file: "mossgate export",
		text:    "Recorded 2026-02-07 09:00:03\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n",
		columns: "position name time", run: "mossgate 2026-02-07", rows: "3-4"},
	{name: "lists of clubs one under the other, without a heading", file: "x",
		text:    "Alder Bank 5k 10 January 2026\nHarriers\nJo Lee|18:22\nAnn Roe|20:10\nSam Field|23:21\n\nVale Striders\nBo Gale|18:51\nCy Ash|21:08\nDi Fox|24:26\n\nUnattached\nEd Orr|19:22\nFay Ivy|25:33\n",
		columns: "name time", run: "alder-bank 2026-01-10", rows: "3-5 8-10 13-14"},
	{name: "places among men and among women under the heading of the place", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\nM1|Jo Lee|18:20\nF1|Ann Roe|18:31\nM2|Sam Field|19:02\nF2|Bo Gale|19:10\nM3|Cy Ash|19:28\n",
		columns: "sex name time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "a volunteer with no place and no time among those who have both", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Role|Club\n1|Jo Lee|18:20|Runner|\n2|Ann Roe|18:31|Runner|Mill Runners\n|Sam Field||Volunteer|Mill Runners\n4|Bo Gale|19:10|Runner|\n5|Cy Ash|19:28|Runner|\n",
		columns: "position name time notes club", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "kilometres, most of them the usual ones", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Km\n1|Jo Lee|18:20|5\n2|Ann Roe|18:31|5\n3|Sam Field|19:02|5\n4|Bo Gale|12:10|3\n5|Cy Ash|19:28|5\n",
		columns: "position name time distance", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "sexes under a heading for notes", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Info\n1|Jo Lee|18:20|M\n2|Ann Roe|18:31|F\n3|Sam Field|19:02|M\n4|Bo Gale|19:10|F\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "classes under a heading for notes", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Info\n1|Jo Lee|18:20|M 34\n2|Ann Roe|18:31|F 41\n3|Sam Field|19:02|M 52\n4|Bo Gale|19:10|F 18\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "how many there were behind the places", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1 of 10|Jo Lee|18:20\n2 of 10|Ann Roe|18:31\n3 of 10|Sam Field|19:02\n4 of 10|Bo Gale|19:10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a class without an age under a heading for notes", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Notes\n1|Jo Lee|18:20|Adult\n2|Ann Roe|18:31|Adult\n3|Sam Field|19:02|Adult\n4|Bo Gale|19:10|Adult\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "letters under a heading for notes that are no sexes", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Notes\n1|Jo Lee|18:20|\n2|Ann Roe|18:31|W\n3|Sam Field|19:02|\n4|Bo Gale|19:10|L\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "names and times with dots, the last of them late", file: "alder-bank_2026-01-03",
		text:    "Jo Lee|17.13\nAnn Roe|18.31\nSam Field|19.02\nBo Gale|19.10\nCy Ash|19.28\nDi Fox|19.40\nEd Orr|20.31\nFay Ivy|20.51\nGus Hay|21.15\nHal Jay|18.55\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "1-10"},
	{name: "the number of a charity above the heading, and the course in the file's name", file: "hartsholme-rec-2026-04-18-results",
		text:    "Registered charity 1234567\nTel 01234 567890\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n",
		columns: "position name time", run: "hartsholme-rec 2026-04-18", rows: "4-5"},
	{name: "a long number beside a day", file: "results",
		text:    "Alder Bank 3 January 2026, charity 1234567\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "the mean below rows that a form has filled with nought", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n3|Sam Field|19:02\n4||00:00\n5||00:00\n|Average|18:38\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "remarks behind most times, one that the race was not finished fairly", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|18:20|PB\n2|Ann Roe|18:31|first visit\n3|Sam Field|19:02|DQ\n4|Bo Gale|19:10|\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "1-4"},
	{name: "four times with dots, one of them with another behind it", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|18:20\n2|Ann Roe|18.31\n3|Sam Field|19.02.\n4|Bo Gale|19.10\n5|Cy Ash|19.28\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "1-5"},
	{name: "names and times with dots, one of them in words", file: "alder-bank_2026-01-03",
		text:    "Jo Lee|17.13\nAnn Roe|18.31\nSam Field|19.02\nBo Gale|19.10\nCy Ash|19.28\nDi Fox|19.40\nEd Orr|see me\nFay Ivy|20.51\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "1-8"},
	{name: "boys, girls and adults under a heading of its own", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Boy/Girl/Adult\n1|Jo Lee|18:20|Adult\n2|Ann Roe|18:31|Girl\n3|Sam Field|19:02|Adult\n4|Bo Gale|19:10|Boy\n5|Cy Ash|19:28|Adult\n6|Di Fox|19:40|Adult\n",
		columns: "position name time age-group", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "letters of sizes beside groups", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Shirt\n1|Jo Lee|18:20|M\n2|Ann Roe|18:31|M\n3|Sam Field|19:02|Junior\n4|Bo Gale|19:10|Junior\n5|Cy Ash|19:28|Junior\n6|Di Fox|19:40|M\n7|Ed Orr|19:51|Junior\n",
		columns: "position name time -", run: "alder-bank 2026-01-03", rows: "2-8"},
	{name: "a comment under the heading is no course", file: "results 7",
		text:    "Thornfield Works League - round 7 - 25 February 2026\nRank|Name|Result\nNB provisional, corrections to Wendy\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n3|Sam Field|19:02\n",
		columns: "position name time", run: "thornfield-works 2026-02-25", rows: "4-6"},
	{name: "blank cells between two of one run", file: "export",
		text:    "event|event_date|pos|name|time\nAlder Bank|2026-01-03|1|Jo Lee|18:20\n||2|Unknown|18:31\nAlder Bank|2026-01-03|3|Sam Field|19:02\nMill Leat|2026-01-10|1|Jo Lee|18:40\n||2|Unknown|18:50\nMill Leat|2026-01-10|3|Ann Roe|19:00\n",
		columns: "course date position name time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "a blank cell above all others, which say one run", file: "export",
		text:    "event|event_date|pos|name|time\n||1|Unknown|18:20\nAlder Bank|2026-01-03|2|Jo Lee|18:31\nAlder Bank|2026-01-03|3|Sam Field|19:02\n",
		columns: "course date position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "the last day of the week and the weekday", file: "wk201",
		text:    "Aldmere Academy Friday 5k\nWeek ending 18 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n",
		columns: "position name time", run: "aldmere-academy 2026-01-16", rows: "4-5"},
	{name: "the first day of the week and the weekday", file: "wk201",
		text:    "Aldmere Academy Tuesday run\nW/C 12 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n",
		columns: "position name time", run: "aldmere-academy 2026-01-13", rows: "4-5"},
	{name: "the weekday on which the week ends alone", file: "wk201",
		text:    "Aldmere Academy 5k\nWeek ending Sunday 18 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "4-5", asks: "date-missing"},
	{name: "a weekday in a title with hyphens", file: "run 201",
		text:    "Old Quay Monday Mile-and-more 5 km\nDate: 12/01/2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n",
		columns: "position name time", run: "old-quay-monday-mile-and-more 2026-01-12", rows: "4-5"},
	{name: "lines pasted with the time before the name", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Club|Time\n1|Jo Lee|Mill AC|18:20\n2|Ann Roe||18:31\n3|Sam Field|Hill Folk|19:02\n4|Bo Gale||19:10\n5|19:28|Cy Ash|\n6|19:40|Di Fox|\n7|19:51||Ed Orr\n8|19:59|?|\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "2-9"},
	{name: "one line below the results that is described as they are", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Sex|Club|Time\n1|Jo Lee|M|Mill AC|18:20\n2|Ann Roe|F|Mill AC|18:31\n3|Sam Field|M||19:02\n4|Bo Gale|F||19:10\n\nMissed off above:\n|Cy Ash|M|Mill AC|18:45\n",
		columns: "position name sex club time notes", run: "alder-bank 2026-01-03", rows: "2-5 8"},
	{name: "who won last week is no finisher", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Sex|Club|Time\n1|Jo Lee|M|Mill AC|18:20\n2|Ann Roe|F|Mill AC|18:31\n3|Sam Field|M||19:02\n4|Bo Gale|F||19:10\n\nWon before Christmas:\n|Cy Ash|M|Mill AC|18:05\n",
		columns: "position name sex club time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "sex and year of birth in one cell", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|M/F|Time\n1|Jo Lee|M/1977|18:20\n2|Ann Roe|F/2001|18:31\n3|Sam Field|M/1990|19:02\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "year and sex in one cell, without headings", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|1977 m|18:20\n2|Ann Roe|2001 f|18:31\n3|Sam Field|1990 m|19:02\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "1-3"},
	{name: "a date in two languages is one day", file: "alder-bank",
		text:    "Alder Bank – 27 Rhagfyr 2025 / 27 December 2025\nPos|Name|Time\n1|Jo Lee|18:20\n2|Ann Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2025-12-27", rows: "3-4"},
	{name: "lines that only say the minutes go on in no line below", file: "alder-bank_2026-01-03", only: "text",
		text:    "Alder Bank\n\n17 minutes\n  Jo Lee 17:15\n\n18 minutes\n  Ann Roe 18:03\n\n19 minutes\n  Sam Field 19:06\n  Bo Gale 19:36\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "4 7 10-11"},
	{name: "a helper below the last row goes on in no club", file: "alder-bank_2026-01-03", only: "text",
		text:    "Place  Name       Sex  Time   Club           Note\n1      Jo Lee     M    17:42  Merrow AC\n2      Ann Roe    F    19:15\n3      Sam Field  M    20:47  Merrow AC\n4      Bo Gale    F    21:50  Hill Striders  PB\n5      Cy Ash     M    22:03  Merrow AC\n       Di Fox     F                           marshal\n",
		columns: "position name sex time club notes", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "letters of teams in brackets, two of them as of sexes", file: "alder-bank_2026-01-03", only: "text",
		text:    "1. Jo Lee (U) 18:01.2, 2. Ann Roe (U) 18:21.9, 3. Sam Field (G) 18:50.0, 4. Bo Gale (F) 19:33.4, 5. Cy Ash (M) 19:43.1, 6. Di Fox (M) 20:25.7, 7. Ed Orr (F) 20:32.6, 8. Flo Hay (U) 21:25.4\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "1-8"},
	{name: "born in Czech is no when", file: "alder-bank_2026-01-03",
		text:    "Poř.|Jméno|Nar.|Čas\n1|Jo Lee|12.3.1977|18:20\n2|Ann Roe|1.5.2001|18:31\n3|Sam Field|30.4.1990|19:02\n",
		columns: "position name birth-date time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a unit in brackets below the heading", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n||(s)\n1|Jo Lee|1094\n2|Ann Roe|1125\n3|Sam Field|1205.5\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "a unit of one letter below the heading", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n||s\n1|Jo Lee|1094\n2|Ann Roe|1125\n3|Sam Field|1205.5\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-5"},
	{name: "plain", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "titles, blank line, footers", file: "results",
		text:    "Alder Bank 5 km\nSaturday 3rd January 2026\n\nPos|Name|Time|Club\n1|Jo Lee|18:20|Fell Harriers\n2|Al Roe|18:31|\n\nFinishers: 2\nTimekeeper: Cy Dee\n",
		columns: "position name time club", run: "alder-bank 2026-01-03", rows: "5-6"},
	{name: "one title line for all", file: "results",
		text:    "Results: Alder Bank 5k, Sat 3 Jan 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "labels and values in cells", file: "upload",
		text:    "Course|Alder Bank\nDate|03/01/2026\nDistance|5 km\nStart|09:30\n\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		o:       Options{DateOrder: "dmy"},
		columns: "position name time", run: "alder-bank 2026-01-03 09:30", rows: "7-8"},
	{name: "labels with colons", file: "upload",
		text:    "Venue: Alder Bank\nDate: 3 January 2026\nRun director: Cy Dee\nWeather: fine, 12 degrees\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "6-7"},
	{name: "heading repeated on each page", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\nPage 1 of 2\n\nPos|Name|Time\n3|Cy Dee|19:02\n4|Di Fox|19:40\nPage 2 of 2\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3 7-8"},
	{name: "a page that ends at twenty-nine minutes and six seconds", file: "alder-bank_2026-01-03",
		text:    "Rank|Name|Gun|Chip\n1|Jo Lee|28.97|28.9\n2|Al Roe|29.1|29.08\nRank|Name|Gun|Chip\n3|Cy Dee|29.37|29.28\n4|Ann Page|29.5|29.5\n5|Di Fox|29.7|29.63\n",
		columns: "position name time chip-time", run: "alder-bank 2026-01-03", rows: "2-3 5-7"},
	{name: "nobody is named, between times that could be dates", file: "alder-bank_2026-01-03",
		text:    "Name|Pos|Gun|Chip|Club\nJo Lee|1|26.53|26.5|\nAl Roe|2|26.59|26.54|\nCy Dee|3|27.08|27.08|\nNo name|4|27.08|27.03|\nDi Fox|5|27.22|27.2|\nAnn Page|6|27.25|27.24|\nEve Hill|7|27.42|27.41|\nName|Pos|Gun|Chip|Club\nFay Ho|8|28.12|28.04|\nHal Kay|9|28.42|28.42|\n",
		columns: "name position time chip-time club", run: "alder-bank 2026-01-03", rows: "2-8 10-11"},
	{name: "records under runs of several days", file: "x",
		text:    "Date|Venue|Time|Runner|Notes\n2026-01-10|Alder Bank|18:20|ROE Al|\n2026-01-10|Alder Bank|19:02|FOX Di|guided\n2026-01-03|Alder Bank|18:31|ROE Al|\n2026-01-03|Alder Bank|24:10|PAGE Ann|\n2026-01-03|Alder Bank|25:40|HO Fay|\n\nCourse records\nM40|Alan Hill|16:58|3 March 2019\nW40|Helen Moor|18:41|7 July 2018\n",
		columns: "date course time name notes", run: "alder-bank 2026-01-10", rows: "2-6"},
	{name: "two blank columns before cells in quotes", file: "alder-bank_2026-01-03", only: "text",
		text:    ",,\"Position\",\"Sex\",\"Name\",\"Time\"\n,,\"1\",\"M\",\"Jo Lee\",\"18:20\"\n,,\"2\",\"F\",\"Al Roe\",\"18:31\"\n,,\"3\",\"M\",\"Cy Dee\",\"19:02\"\n,,\"4\",\"M\",\"Di Fox\",\"19:40\"\n,,\"5\",\"F\",\"Ann Page\",\"21:40\"\n",
		columns: "- - position sex name time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "winners under walkers' hours", file: "alder-bank_2026-01-03",
		text:    "Runner|Age cat|Result|Sex\nJ. Lee|M45|22:12|M\nA. Roe|SM|22:36|M\nC. Dee|W45|43:52|F\nD. Fox|W50|1:05|F\nE. Hill|M35|1:24|M\n\nFirst home|Jo Lee|22:12|\nFastest ever here|Ruth Hill|17:02|\n1st team|Fell Harriers|12 points|\n",
		columns: "name age-group time sex", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "a heading of two rows over each of two runs, their columns in another order", file: "x",
		text:    "Alder Bank 3 January 2026\nFinish||Runner\nTime|Pos|Name\n18:20|1|Jo Lee\n18:31|2|Al Roe\n19:02|3|Di Fox\n\n\nAlder Bank 10 January 2026\n\nFinish||Runner\nPos|Time|Name\n1|19:02|Cy Dee\n2|19:40|Di Fox\n3|20:40|Jo Lee\n",
		columns: "time position name", run: "alder-bank 2026-01-03", rows: "4-6 13-15"},
	{name: "a date whose month is called like a time", file: "x",
		text:    "Trasa|Alder Bank\nData|29 marca 2025\n\nFinish|||Runner\nLp.|Czas|Tempo|Nazwisko\n1|18:20|3:40|Jo Lee\n2|18:31|3:42|Al Roe\n3|19:02|3:48|Di Fox\n",
		columns: "position time - name", run: "alder-bank 2025-03-29", rows: "6-8"},
	{name: "minutes that rise are no places", file: "alder-bank_2026-01-03",
		text:    "Halfway|Mins|Name|Seconds|Club\n10:38|21|Jo Lee|42|\n11:18|23|Al Roe|2|Fell Harriers\n12:13|24|Cy Dee|54|\n13:18|27|Di Fox|7|\n14:10|28|Ann Page|40|\nTotal|5|||\n",
		columns: "split - name - club time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "rows apart at the end, an impossible time among parts of a day", file: "alder-bank_2026-01-03",
		text:    "Final time|Name|Gender\n0.0115509|Jo Lee|M\n0.0140972|Al Roe|M\n0.0146296|Cy Dee|M\n0.0151296|Di Fox|F\n0.0155509|Ann Page|F\n0.0046991|Hal Kay|M\n0.0160972|Eve Hill|F\n\n0.0244328|Fay Ho|F\n0.0245486|Ida Moor|F\n",
		columns: "time name sex", run: "alder-bank 2026-01-03", rows: "2-8 10-11"},
	{name: "seconds under Finish, one of them impossible", file: "alder-bank_2026-01-03",
		text:    "Overall Place|Athlete|Finish|AG %\n1st|Jo Lee|1138|67.8\n2nd|Al Roe|1226|62.9\n3rd|Cy Dee|1249|64.0\n4th|Di Fox|1277|60.2\n5th|Hal Kay|296|261.9\n6th|Eve Hill|1350|59.9\n7th|Fay Ho|1351|59.8\n8th|Ida Moor|1379|58.0\n9th|Max Hill|1401|57.0\n10th|Ann Page|1402|56.9\n11th|Bo Finch|1405|56.7\n",
		columns: "position name time age-grade", run: "alder-bank 2026-01-03", rows: "2-12"},
	{name: "places of each run under Nr., beside start numbers", file: "x",
		text:    "Date|Course|Start no.|Time|Name|Nr.\n2026-01-03|Alder Bank|101|18:20|Jo Lee|1\n2026-01-03|Alder Bank|107|18:31|Al Roe|2\n2026-01-03|Alder Bank|119|24:00|Cy Dee|DQ\n2026-01-10|Alder Bank|107|18:40|Al Roe|1\n2026-01-10|Alder Bank|101|19:31|Jo Lee|2\n2026-01-10|Alder Bank|110|19:40|Di Fox|3\n",
		columns: "date course number time name position", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "times predicted on whole half minutes beside times", file: "alder-bank_2026-01-03",
		text:    "Platz|Name|Zielzeit|Zeit\n1|Jo Lee|18:30|18:20\n2|Al Roe|18:00|18:31\n3|Cy Dee|20:00|19:02\n4|Di Fox|19:30|19:40\n5|Ann Page|21:00|21:40\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "a category of seniors by their sex, and one veteran", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Category|Time\n1|Jo Lee|F|18:20\n2|Al Roe|M|18:31\n3|Cy Dee|F|19:02\n4|Di Fox|F50|19:40\n5|Ann Page|M|21:40\n6|Bo Reed|M|21:50\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "a line of three cells left of the table", file: "alder-bank_2026-01-03",
		text:    "||||Pos|Name|Club|Time\n||||1|Jo Lee|Vale AC|18:20\n||||2|Al Roe|Vale AC|18:31\n||||3|Cy Dee|Mill AC|19:02\n||||4|Di Fox|Vale AC|19:40\nthanks|to|all\n",
		columns: "- - - - position name club time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "walkers of over an hour under a blank line", file: "alder-bank_2026-01-03",
		text:    "Name|Time|Club\nJo Lee|44:20|\nAl Roe|45:31|\nCy Dee|57:19|\nDi Fox|1:08|\nHal Kay|1:12|\n\nAnn Page|1:16|\nFay Ho|1:18|\n\nFinishers: 7\n",
		columns: "name time club", run: "alder-bank 2026-01-03", rows: "2-6 8-9"},
	{name: "records under speeds", file: "alder-bank_2026-01-03",
		text:    "km/h|Name|Time|Club|Group\n12.1|Jo Lee|0.0172337|Fell Harriers|M40\n11.7|Al Roe|0.0178009||\n11.4|Cy Dee|0.0182407||Senior\n9.3|Di Fox|0.0224421||W45\n8.5|Ann Page|0.0246180||\n8.4|Eve Hill|0.0248611||\n\nCourse records\nM40|Alan Hill|16:58|3 March 2019|\nW40|Helen Moor|18:41|7 July 2018|\n",
		columns: "pace name time club age-group", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "minutes and seconds in columns of their own are nothing that is missed", file: "alder-bank_2026-01-03",
		text:    "Place|Name|Minutes|Seconds|Age Group\n1|Jo Lee|17|58|M40-44\n2|Di Fox|18|22|F35-39\n3|Al Roe|19|1|M20-34\n",
		columns: "position name - - age-group time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "days of which an encoding has mangled the month", file: "x", only: "text",
		text:    "Date|Lieu|Participant|Temps final\n20 dÃ©cembre 2025|Alder Bank|Jo Lee|18:20\n20 dÃ©cembre 2025|Alder Bank|Al Roe|18:31\n20 dÃ©cembre 2025|Alder Bank|Di Fox|19:31\n",
		columns: "date course name time", run: "alder-bank 2025-12-20", rows: "2-4"},
	{name: "men and women side by side, nothing else over them", file: "x",
		text:    "Date|3 January 2026||\nVenue|Alder Bank||\nMen||Women|\nJo Lee|17:58|Di Fox|18:22\nAl Roe|19:01|Ann Page|22:10\nCy Dee|24:45|Fay Ho|27:30\nEd Gow|25:10||\n",
		columns: "name time sex", run: "alder-bank 2026-01-03", rows: "4-7 4-6"},
	{name: "clubs and paces behind names and times are no second list", file: "alder-bank_2026-01-03",
		text:    "Jo Lee|17:58|Mere AC|3:36\nAl Roe|19:01|Fell Harriers|3:48\nCy Dee|24:45|Dale RC|4:57\nEd Gow|25:10|Moss Hill|5:02\n",
		columns: "name time club -", run: "alder-bank 2026-01-03", rows: "1-4"},
	{name: "minutes, seconds and tenths with dots", file: "alder-bank_2026-01-03",
		text:    "|Time|Name|Cat\n1.|17.58.2|Jo Lee|Sen M\n2.|18.22.9|Di Fox|Vet 40 F\n3.|19.01.0|Al Roe|Vet 50 M\n",
		columns: "position time name age-group", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "minutes, seconds and hundredths with dots, some like dates", file: "alder-bank_2026-01-03",
		text:    "Pos|Time|Name\n1|17.58.23|Jo Lee\n2|18.22.90|Di Fox\n3|19.01.05|Al Roe\n4|20.34.17|Cy Dee\n5|21.45.60|Ann Page\n",
		columns: "position time name", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "results under Res., some of them unsure", file: "alder-bank_2026-01-03",
		text:    "Athlete|Club|Res.|Notes\nLEE Jo|Mere AC|17:58|CR\nFOX Di||(18:22)|\nDEE Cy|Dale RC|NT|forgot to scan\nPAGE Ann|Dale RC|22:10|hand timed\nGOW Ed|Mere AC|(24:45)|pacer\nHO Fay||~27:30|approx\n",
		columns: "name club time notes", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "two lists side by side in Romanian", file: "x",
		text:    "Lunca Mare – Clasament general – 19 iulie 2026\n\nBărbați||||Femei||\nLoc|Nume|Timp final||Loc|Nume|Timp final\n1|Jo Lee|0:23:05||1|Di Fox|0:24:43\n2|Al Roe|0:23:12||2|Ann Page|0:25:19\n3|Cy Dee|0:23:26||3|Fay Ho|0:26:44\n",
		columns: "position name time sex", run: "lunca-mare 2026-07-19", rows: "5-7 5-7"},
	{name: "times of over an hour after a remark of two lines", file: "alder-bank_2026-01-03", only: "text",
		text:    "Name,Time,Notes\nJo Lee,44:20,\nAl Roe,45:31,\nCy Dee,47:19,\"great weather\nsee you soon\"\nDi Fox,1:08,\nAnn Page,1:16,\n",
		columns: "name time notes", run: "alder-bank 2026-01-03", rows: "2-4 6-7"},
	{name: "primes between commas, and a start and a next week in prose", file: "alder-bank_2026-01-03", only: "text",
		text:    "Start 09:00\n\nPOS,NAME,TIME\n1,Jo Lee,18′20″\n2,Al Roe,18′31″\n3,Cy Dee,19′02″\n4,Di Fox,19′40″\n\nNext week's run starts at 9:00 as usual. 3 volunteers still needed.\n",
		columns: "position name time", run: "alder-bank 2026-01-03 09:00", rows: "4-7"},
	{name: "winners under each of two runs", file: "x",
		text:    "Alder Bank 3 January 2026\nName|Sex|Club|Time\nJo Lee|M||18:20\nAnn Page|F||19:31\nCy Dee|M||20:02\n\nFirst home|Jo Lee|18:20\n1st team|Fell Harriers|12 points\n\nAlder Bank 10 January 2026\nName|Sex|Club|Time\nJo Lee|M||18:25\nAnn Page|F||19:36\nCy Dee|M||20:07\n\nFirst home|Jo Lee|18:25\n1st team|Fell Harriers|12 points\n",
		columns: "name sex club time", run: "alder-bank 2026-01-03", rows: "3-5 12-14"},
	{name: "records under times in another way of writing", file: "alder-bank_2026-01-03",
		text:    "Age group|Name|Time|Club\nM40|Jo Lee|19.56|\nSenior|Al Roe|21.01|\nV50|Cy Dee|44.45|\nW40|Di Fox|47.40|\n\nCourse records\nM40|Alan Hill|16:58|3 March 2019\nW40|Helen Moor|18:41|7 July 2018\n",
		columns: "age-group name time club", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "the last man's time is no date over the women's times", file: "alder-bank_2026-01-03",
		text:    "Men\nPos|Name|Gun|Chip\n1|Jo Lee|0.18.20|0.18.15\n2|Al Roe|0.34.00|0.33.54\n3|Hal Kay\n4|Cy Dee|1.25.21|1.25.19\n\nWomen\nPos|Name|Gun|Chip\n1|Ann Page|0.22.43|0.22.42\n2|Di Fox|0.22.50|0.22.46\n3|Eve Hill|0.24.50|0.24.46\n",
		columns: "position name time chip-time sex", run: "alder-bank 2026-01-03", rows: "3-6 10-12"},
	{name: "rows that begin with two blank cells and with one", file: "alder-bank_2026-01-03", only: "text",
		text:    "Age group|Club|Name|Position|Time\n|Fell Harriers|Jo Lee|1|18:20\n|Fell Harriers|Al Roe|2|18:31\nV40||Cy Dee|3|19:02\n||Di Fox|4|19:40\n",
		columns: "age-group club name position time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "places go by the time, some of it marked as text, not by the chip", file: "alder-bank_2026-01-03", only: "text",
		text:    "Pos|Finish time|Name|Chip time\n1|'0:18:06|Jo Lee|0:18:00\n2|20:08|Al Roe|0:20:08\n3|'0:20:53|Cy Dee|0:20:48\n4|0:22:16|Di Fox|0:22:12\n5|23:45|Ann Page|0:23:45\n6|'0:23:48|Eve Hill|0:23:40\n7|24:02|Fay Ho|0:23:59\n8|24:10|Hal Kay|0:24:09\n",
		columns: "position time name chip-time", run: "alder-bank 2026-01-03", rows: "2-9"},
	{name: "the place said once, totals below", file: "x",
		text:    "Fecha|Lugar|Clasificación|Corredor|Tiempo\n2026-01-03|Alder Bank|1|Jo Lee|18:20\n||2|Al Roe|18:31\n||3|Cy Dee|19:02\n||4|Di Fox|19:40\n\nTotal finishers|4\nMen|3\nAverage time|18:53\n",
		columns: "date course position name time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a tie without its place on the next page", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Notes\n1|Jo Lee|18:20|\n2|Al Roe|18:31|\n3|Cy Dee|19:02|\nPage 1 of 2\n\nPos|Name|Time|Notes\n|Di Fox|19:02|walker\n\nMarshal|Ann Page||\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "2-4 8"},
	{name: "a total under a column of seconds", file: "alder-bank_2026-01-03",
		text:    "Overall place|Finish|Name|Sex|Age|Score\n1|1300|Jo Lee|M|46|100\n2|1302|Al Roe|M|16|99\n3|1369|Di Fox|F|32|98\n4|1448|Cy Dee|M|25|97\n5|1981|Ann Page|F|35|96\nTotal|5\n",
		columns: "position time name sex age points", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "winners under minutes and seconds", file: "alder-bank_2026-01-03",
		text:    "Min|Born|Name|Club|Sec|Position|Sex\n23|1982|Jo Lee||42|1|M\n26|1980|Di Fox|Fell Harriers|38|2|F\n27|1987|Al Roe||11|3|M\n29|1976|Ann Page||39|4|F\n30|2007|Cy Dee||1|5|M\n30|1994|Fay Ho||27|6|F\n\nFirst home|Jo Lee|23:42\nFastest ever here|Ruth Hill|17:02\n1st team|Fell Harriers|12 points\n",
		columns: "- birth-year name club - position sex time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "a column of times a day, each headed with the word and its day", file: "alder-bank_2026",
		text:    "Name|Time 03/01/2026|Time 10/01/2026|Time 17/01/2026\nJo Lee|18:20|18:31|\nAl Roe|19:02||19:10\nCy Dee||20:01|20:05\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "2-3 2 4 3-4"},
	{name: "names across the page and days down it", file: "alder-bank",
		text:    "Name|Jo Lee|Al Roe|Cy Dee|Di Fox\n03/01/2026|18:20|19:02||21:05\n10/01/2026|18:31||20:01|21:10\n17/01/2026||19:10|20:05|21:00\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "2-3 5 2 4-5 3-5"},
	{name: "moments of one morning from a scanner", file: "alder-bank_2026-01-03", only: "text",
		text:    "Start,03/01/2026 09:00:00,watch 1\n0,03/01/2026 09:00:00\n1,03/01/2026 09:18:20,00:18:20\n2,03/01/2026 09:18:31,00:18:31\n3,03/01/2026 09:19:02,00:19:02\n4,03/01/2026 09:19:40,00:19:40\n5,03/01/2026 09:20:01,00:20:01\n",
		columns: "position date time", run: "alder-bank 2026-01-03", rows: "3-7", kind: "times"},
	{name: "a page that begins with an impossible time", file: "alder-bank_2026-01-03",
		text:    "Name|Sex|Time\nJo Lee|M|28:20\nAl Roe|M|28:31\nCy Dee|M|34:02\nPage 1 of 2\n\nName|Sex|Time\nDi Fox|F|3:59\nAnn Page|F|36:21\nEve Hill|F|1:02:11\n\nCourse records\nAlan Hill|16:58|3 March 2019\n",
		columns: "name sex time", run: "alder-bank 2026-01-03", rows: "2-4 8-10"},
	{name: "a third run in the order of columns of the first", file: "x",
		text:    "Alder Bank 3 January 2026\nName|Pos|Time|Club\nJo Lee|1|18:20|\nAl Roe|2|18:31|Fell Harriers\n\nAlder Bank 10 January 2026\nPos|Name|Club|Time\n1|Cy Dee||19:02\n2|Di Fox||19:40\n\nAlder Bank 17 January 2026\nName|Pos|Time|Club\nAnn Page|1|18:20|\nEve Hill|2|18:31|Fell Harriers\n",
		columns: "name position time club", run: "alder-bank 2026-01-03", rows: "3-4 8-9 13-14"},
	{name: "as many tabs in each line, many of them side by side", file: "alder-bank_2026-01-03", only: "text",
		text:    "1\tJo Lee\tFell Harriers\t17:58\t\n2\tAl Roe\t\t20:32\t\n3\tCy Dee\t\t21:54\t\"great weather\nsee you soon\"\n4\tDi Fox\t\t21:54\t\n5\tAnn Page\t\t22:00\t\"new shoes\nsee you soon\"\n6\tEve Hill\t\t22:51\t\"hot\nsee you soon\"\n7\tFay Ho\tFell Harriers\t23:14\t\n8\tHal Kay\tFell Harriers\t23:15\t\n",
		columns: "position name club time notes", run: "alder-bank 2026-01-03", rows: "1-3 5-6 8 10-11"},
	{name: "the times behind the first are of the net time", file: "alder-bank_2026-01-03",
		text:    "Platz|Name|Nettozeit|Brutto|Rückstand\n1|Jo Lee|0:16:41|0:16:45|\n2|Al Roe|0:20:02|0:20:17|3:21\n3|Cy Dee|0:22:21|0:22:38|5:40\n4|Di Fox|0:23:32|0:23:44|6:51\n5|Ann Page|0:24:42|0:24:54|8:01\n6|Eve Hill|0:25:57|0:26:01|9:16\n7|Fay Ho|0:27:42|0:28:02|11:01\n",
		columns: "position name time - gap", run: "alder-bank 2026-01-03", rows: "2-8"},
	{name: "the times behind the first are of the gun time", file: "alder-bank_2026-01-03",
		text:    "Platz|Name|Nettozeit|Brutto|Rückstand\n1|Jo Lee|0:16:41|0:16:45|\n2|Al Roe|0:20:02|0:20:17|+3:32\n3|Cy Dee|0:22:21|0:22:38|+5:53\n4|Di Fox|0:23:32|0:23:44|+6:59\n5|Ann Page|0:24:42|0:24:54|+8:09\n6|Eve Hill|0:25:57|0:26:01|+9:16\n7|Fay Ho|0:27:42|0:28:02|+11:17\n",
		columns: "position name chip-time time gap", run: "alder-bank 2026-01-03", rows: "2-8"},
	{name: "title over the names repeated on each page", file: "x",
		text:    "Alder Bank|2026-01-03\nName|Time|Age\nJo Lee|18:20|31\nAl Roe|18:31|44\nPage 1 of 2\n\nAlder Bank|2026-01-03\nName|Time|Age\nCy Dee|19:02|50\nDi Fox|19:40|23\n",
		columns: "name time age", run: "alder-bank 2026-01-03", rows: "3-4 9-10"},
	{name: "title and heading repeated on each page", file: "x",
		text:    "Alder Bank|3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\nAlder Bank|3 January 2026\nPos|Name|Time\n3|Cy Dee|19:02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4 7"},
	{name: "heading over two rows", file: "alder-bank_2026-01-03",
		text:    "|Runner|||Finish|Age|Category\nPos|First|Last|Club|time|group|pos\n1|Jo|Lee||18:20|SW|1\n2|Al|Roe|Fell Harriers|18:31|M40|1\n",
		columns: "position given-name family-name club time age-group group-place", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "units under the heading", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Age\n|||years\n1|Jo Lee|18:20|33\n2|Al Roe|18:31|44\n",
		columns: "position name time age", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "no heading", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|18:20|W|33|Fell Harriers\n2|Al Roe|18:31|M|44|Fell Harriers\n3|Cy Dee|19:00|M|51|Bank Runners\n4|Di Fox|19:20|W|29|Bank Runners\n5|Ed Gow|19:40|M|37|Vale Striders\n",
		columns: "position name time sex age club", run: "alder-bank 2026-01-03", rows: "1-5"},
	{name: "no heading, no positions", file: "alder-bank_2026-01-03",
		text:    "Jo Lee|18:20\nAl Roe|18:31\nCy Dee|19:00\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "1-3"},
	{name: "German", file: "Ergebnisse",
		text:    "Erlenufer 5 km\nSamstag, 3. Januar 2026\nPl.|Nachname|Vorname|Jg.|m/w|AK|Pl. AK|Verein|Zeit|Rückstand\n1|Lee|Jo|1990|w|WHK|1|TV Tal|18:20|\n2|Roe|Al|1984|m|M40|1||18:31|0:11\nGesamt: 2\n",
		columns: "position family-name given-name birth-year sex age-group group-place club time gap", run: "erlenufer 2026-01-03", rows: "4-5"},
	{name: "German Name and Vorname", file: "erlenufer_2026-01-03",
		text:    "Platz|Name|Vorname|Verein|Zeit\n1|Lee|Jo|TV Tal|18:20\n2|Roe|Al||18:31\n",
		columns: "position family-name given-name club time", run: "erlenufer 2026-01-03", rows: "2-3"},
	{name: "French", file: "resultats",
		text:    "Parcours : Rive des Aulnes\nDate : samedi 3 janvier 2026\nPlace|Nom|Prénom|Catégorie|Sexe|Club|Temps|Écart\n1|Lee|Jo|SEF|F||18:20|\n2|Roe|Al|M1H|M|AC Val|18:31|0:11\n",
		columns: "position family-name given-name age-group sex club time gap", run: "rive-des-aulnes 2026-01-03", rows: "4-5"},
	{name: "Spanish", file: "ribera-del-aliso_2026-01-03",
		text:    "Puesto|Dorsal|Apellidos|Nombre|Categoría|Sexo|Club|Tiempo|Ritmo\n1|101|Lee|Jo|SF|F||18:20|3:40\n2|102|Roe|Al|VM40|M||18:31|3:42\n",
		columns: "position number family-name given-name age-group sex club time pace", run: "ribera-del-aliso 2026-01-03", rows: "2-3"},
	{name: "Italian", file: "riva_2026-01-03",
		text:    "Pos.|Pettorale|Cognome e nome|Anno|Cat.|Società|Tempo|Distacco\n1|11|LEE JO|1990|SF||18:20|\n2|12|ROE AL|1984|SM40||18:31|0:11\n",
		columns: "position number name birth-year age-group club time gap", run: "riva 2026-01-03", rows: "2-3"},
	{name: "Dutch", file: "elzenoever_2026-01-03",
		text:    "Plaats|Startnummer|Naam|Woonplaats|Geslacht|Leeftijd|Vereniging|Tijd\n1|1|Jo Lee|Dalstad|V|33||18:20\n2|2|Al Roe|Dalstad|M|44||18:31\n",
		columns: "position number name - sex age club time", run: "elzenoever 2026-01-03", rows: "2-3"},
	{name: "Portuguese", file: "margem_2026-01-03",
		text:    "Posição|Nome|Idade|Sexo|Escalão|Equipa|Tempo\n1|Jo Lee|33|F|SEN|Vale|18:20\n2|Al Roe|44|M|V40|Vale|18:31\n",
		columns: "position name age sex age-group club time", run: "margem 2026-01-03", rows: "2-3"},
	{name: "Polish", file: "olszyna_2026-01-03",
		text:    "Miejsce|Nazwisko|Imię|Rok urodzenia|Płeć|Kategoria|Klub|Czas\n1|Lee|Jo|1990|K|K30|Dolina|18:20\n2|Roe|Al|1984|M|M40|Dolina|18:31\n",
		columns: "position family-name given-name birth-year sex age-group club time", run: "olszyna 2026-01-03", rows: "2-3"},
	{name: "Swedish", file: "alstrand_2026-01-03",
		text:    "Placering|Namn|Förening|Klass|Kön|Tid|Efter\n1|Jo Lee|Dalen IF|K35|K|18:20|\n2|Al Roe|Dalen IF|M40|M|18:31|0:11\n",
		columns: "position name club age-group sex time gap", run: "alstrand 2026-01-03", rows: "2-3"},
	{name: "Danish", file: "ellebred_2026-01-03",
		text:    "Placering|Startnr.|Fornavn|Efternavn|Køn|Alder|Klub|Tid\n1|1|Jo|Lee|K|33|Dal|18:20\n2|2|Al|Roe|M|44|Dal|18:31\n",
		columns: "position number given-name family-name sex age club time", run: "ellebred 2026-01-03", rows: "2-3"},
	{name: "Age holds an age grade", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|Age|Cat\n1|Jo Lee|18:20|81.25|SW30-34\n2|Al Roe|18:31|75.20|VM40-44\n",
		columns: "position name time age-grade age-group", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "Age holds a group, Cat a sex, Pos twice", file: "alder-bank_2026-01-03",
		text:    "Pos|Cat|Pos|Name|Age|Time\n1|F|1|Jo Lee|SW|18:20\n2|M|1|Al Roe|V40|18:31\n3|M|2|Cy Dee|V50|19:00\n4|F|2|Di Fox|SW|19:20\n",
		columns: "position sex - name age-group time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "gun and chip", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Gun time|Chip time\n1|Jo Lee|18:20|18:19\n2|Al Roe|18:31|18:27\n",
		columns: "position name time chip-time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "chip only", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Chip time\n1|Jo Lee|18:19\n2|Al Roe|18:27\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "gap, pace, split, points, personal best, total runs", file: "alder-bank_2026-01-03",
		text:    "Rank|Runner|Lap 1|Time|Gap|Pace|PB|Runs|Points|Gender Pos\n1|Jo Lee|9:01|18:20|0:00|3:40|18:01|12|100|1\n2|Al Roe|9:05|18:31|0:11|3:42|18:31|7|99|1\n",
		columns: "position name split time gap pace personal-best total-runs points sex-place", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "No is the position", file: "alder-bank_2026-01-03",
		text:    "No|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:00\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "No is the number", file: "alder-bank_2026-01-03",
		text:    "Pos|No|Name|Time\n1|412|Jo Lee|18:20\n2|87|Al Roe|18:31\n3|133|Cy Dee|19:00\n",
		columns: "position number name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "unnamed, untimed, did not finish, ties", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2=|Al Roe|18:31\n2=|Cy Dee|18:31\n4||19:00\n5|Di Fox|\n|Ed Gow|DNF\nDNF|Fi Hay|\n6|Total|20:00\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-9"},
	{name: "totals and averages", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n|Average|18:25\nTotal|2|\n|Fastest time|18:20\nBest time|Jo Lee|18:20\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "people called Total, Best and Max", file: "alder-bank_2026-01-03",
		text:    "Name|Time\nBest George|18:20\nMax Roe|18:31\nMean Lee|19:00\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "printed positions beyond the finishers", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2||\n3|Cy Dee|19:00\n4||\n5||\n6||\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "times alone", file: "times_alder-bank_2026-01-03",
		text:    "Pos|Time\n1|18:20\n2|18:31\n",
		columns: "position time", run: "alder-bank 2026-01-03", rows: "2-3", kind: "times"},
	{name: "one column of times", file: "alder-bank_2026-01-03",
		text:    "Time\n18:20\n18:31\n19:00\n",
		columns: "time", run: "alder-bank 2026-01-03", rows: "2-4", kind: "times"},
	{name: "names alone", file: "names_alder-bank_2026-01-03",
		text:    "Position|Number|Name\n1|A12|Jo Lee\n2|A7|Al Roe\n",
		columns: "position number name", run: "alder-bank 2026-01-03", rows: "2-3", kind: "names"},
	{name: "season list with course and date", file: "season 2026",
		text:    "Date|Course|Pos|Name|Time\n03/01/2026|Alder Bank|1|Jo Lee|18:20\n03/01/2026|Alder Bank|2|Al Roe|18:31\n17/01/2026|Mill Lane|1|Jo Lee|18:40\n",
		columns: "date course position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "season list, course and date only where they change", file: "season 2026",
		text:    "Date|Course|Pos|Name|Time\n3 Jan 2026|Alder Bank|1|Jo Lee|18:20\n||2|Al Roe|18:31\n||3|Cy Dee|18:35\n17 Jan 2026|Mill Lane|1|Jo Lee|18:40\n||2|Al Roe|18:51\n",
		columns: "date course position name time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "runs one after the other", file: "alder bank",
		text:    "Alder Bank\nSaturday 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\nSaturday 10 January 2026\nPos|Name|Time\n1|Cy Dee|19:02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5 8"},
	{name: "men and women under lines of their own", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\nMen\n1|Al Roe|18:31\n2|Cy Dee|18:40\nWomen\n1|Jo Lee|18:50\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-4 6"},
	{name: "name of the file in other order", file: "2026-01-03 Alder Bank results v2",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "name of the folder", file: "alder-bank/2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "printed later", file: "x",
		text:    "Alder Bank - 3 January 2026\nPrinted 5 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "weekday settles the order", file: "x",
		text:    "Alder Bank\nSaturday 07/02/2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-02-07", rows: "4-5"},
	{name: "course's weekday settles the order", file: "x", o: Options{Courses: []CourseName{{Course: "alder-bank", Names: []string{"Alder Bank 5 km"}, Weekday: 6}}},
		text:    "Alder Bank 02/07/2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-02-07", rows: "3-4"},
	{name: "name of the file settles the order", file: "results 2026-02-07",
		text:    "Alder Bank 02/07/2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-02-07", rows: "3-4"},
	{name: "the number of runs so far makes no pivot table", file: "alder-bank_2026-01-03",
		text:    "Classement|Coureur|Genre|Temps final|Nombre de courses\n1|Jo Lee|F|18:20|187\n2|Al Roe|H|18:31|70\n",
		columns: "position name sex time total-runs", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "numbered pages are no ages", file: "alder-bank_2026-01-03",
		text:    "Pos|Time|Name|Sex\n1|18:20|Jo Lee|F\n2|18:31|Al Roe|M\nPage 1 of 7|||\nPos|Time|Name|Sex\n3|18:40|Bo Fay|M\n4|18:50|Di Ash|F\nPage 2 of 7|||\n5|19:50|Ed Oak|M\n",
		columns: "position time name sex", run: "alder-bank 2026-01-03", rows: "2-3 6-7 9"},
	{name: "the time between two clocks stands there in hundredths", file: "alder-bank_2026-01-03",
		text:    "#|Competitor|Start|Finish clock|Run time\n1|Jo Lee|9:00:00|9:16:44|16:44:51\n2|Al Roe|9:00:00|9:21:40|21:40:69\n3|Bo Fay|9:00:00|9:21:45|21:45:34\n",
		columns: "position name session - time", run: "alder-bank 2026-01-03 09:00", rows: "2-4"},
	{name: "seconds before a blank column", file: "alder-bank_2026-01-03",
		text:    "Position|Name|Age group|Club|Time|\n1|Jo Lee||Alder Harriers|1107.1|\n2|Al Roe||Birch AC|1148.0|\n3|Bo Fay||Cole RC|1159.3|\n4|Di Ash|U20|Birch AC|1203.6|\n",
		columns: "position name age-group club time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "men beside women, with nothing above", file: "alder-bank_2026-01-03",
		text:    "Men|||Women||\nPos|Name|Time|Pos|Name|Time\n1|Jo Lee|18:20|1|Ann Bee|20:01\n2|Al Roe|18:31|2|Cat Dee|21:02\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-4 3-4"},
	{name: "a tie at the end without a place, after a blank line", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n|Bo Fay|18:31\n4|Gil Yew|18:40\n5|Hal Ivy|18:50\n6|Cy Dee|19:00\n\n|Eve Ng|19:00\n\n|Fay Oak|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-7 9"},
	{name: "order not known", file: "x",
		text:    "Alder Bank 03/04/2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "3-4", asks: "date-unclear"},
	{name: "order from the configuration", file: "x", o: Options{DateOrder: "mdy"},
		text:    "Alder Bank 03/04/2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-03-04", rows: "3-4"},
	{name: "no year", file: "x",
		text:    "Alder Bank, Sat 3 Jan\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "3-4", asks: "year-missing"},
	{name: "year from the folder", file: "2026/alder bank sat 3 jan",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "no course", file: "results_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "2-3", asks: "course-missing"},
	{name: "no date", file: "alder-bank",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "2-3", asks: "date-missing"},
	{name: "a day that there is not", file: "alder-bank_2026-02-30",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "2-3", asks: "date-impossible"},
	{name: "a day that there is not, in the title", file: "x",
		text:    "Alder Bank, 31/11/2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "3-4", asks: "date-impossible"},
	{name: "neither", file: "results",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "2-3", asks: "course-missing date-missing"},
	{name: "given by hand wins", file: "mill-lane_2026-01-10", o: Options{Course: "Alder Bank", Date: "2026-01-03", Session: "2"},
		text:    "Mill Lane 10 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03 2", rows: "3-4"},
	{name: "club as the organiser", file: "x",
		text:    "Fell Harriers Athletic Club\nAlder Bank 5 km\n3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "5-6"},
	{name: "number of the event", file: "x",
		text:    "Alder Bank – event 123 – 3 January 2026 – 57 finishers\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "results of the 12th run", file: "x",
		text:    "Results of the 12th Alder Bank run on 3rd January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "dates of birth are no run dates", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|DOB|Time\n1|Jo Lee|12/05/1990|18:20\n2|Al Roe|31/01/1984|18:31\n",
		columns: "position name birth-date time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "session column", file: "alder-bank_2026-01-01",
		text:    "Session|Pos|Name|Time\n9:00|1|Jo Lee|18:20\n10:30|1|Jo Lee|18:31\n",
		columns: "session position name time", run: "alder-bank 2026-01-01 09:00", rows: "2-3"},
	{name: "labels with numbers above the heading", file: "alder-bank_2026-01-03",
		text:    "Weather|dry\nVolunteers|14\nFinishers|70\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "5-6"},
	{name: "a course that begins with a month", file: "x",
		text:    "March Hollow, 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "march-hollow 2026-01-03", rows: "3-4"},
	{name: "month and year are no course", file: "alder-bank", o: Options{Date: "2026-01-03"},
		text:    "January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "women above the heading, men below", file: "alder-bank_2026-01-03",
		text:    "Women\nPos|Name|Time\n1|Jo Lee|18:50\n2|Di Fox|18:55\nMen\nPos|Name|Time\n1|Al Roe|18:31\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-4 7"},
	{name: "men and women side by side", file: "alder-bank_2026-01-03",
		text:    "Men||||Women\nPos|Name|Time||Pos|Name|Time\n1|Al Roe|18:31||1|Jo Lee|18:50\n2|Cy Dee|18:40||2|Di Fox|18:55\n||||3|Fi Hay|19:00\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-4 3-5"},
	{name: "two runs with their columns in another order", file: "x",
		text:    "Alder Bank 3 January 2026\n\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n\nAlder Bank 10 January 2026\n\nName|Time|Pos\nCy Dee|19:02|1\nJo Lee|19:12|2\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5 10-11"},
	{name: "course records under the results", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Club|Time\n1|Jo Lee|Fell|18:20\n2|Al Roe|Fell|18:31\n3|Cy Dee||18:40\n4|Di Fox|Vale|18:59\n\nCourse records\nCategory|Name|Time|Date\nM40|Al Roe|16:58|3 March 2019\nW40|Jo Lee|18:01|7 July 2018\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "footers where the columns stand in another order", file: "alder-bank_2026-01-03",
		text:    "Club|Time|Name|Sex|Pos\nFell|18:20|Jo Lee|F|1\nFell|18:31|Al Roe|M|2\n|18:40|Cy Dee|M|3\nVale|18:59|Di Fox|F|4\n|DNF|Fi Hay|F|\n\nTotal finishers|4\nMen|2|Women|2\nFirst home|Jo Lee|18:20\nMarshal|Ed Gow\nTimekeeper|Gil Orr\n",
		columns: "club time name sex position", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "minutes and seconds in two columns", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Min|Sec\n1|Jo Lee|18|5\n2|Al Roe|18|31\n3|Cy Dee|19|00\n",
		columns: "position name - - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "clock at the finish beside the time", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time in|Time\n1|Jo Lee|09:18:20|18:20\n2|Al Roe|09:18:31|18:31\n3|Cy Dee|09:19:00|19:00\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "headings one letter off", file: "alder-bank_2026-01-03",
		text:    "Postion|Firstname|Sirname|Gendar|Catagory|Time\n1|Jo|Lee|F|SW|18:20\n2|Al|Roe|M|M40|18:31\n",
		columns: "position given-name family-name sex age-group time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "hours, minutes and seconds with full stops", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|0.18.20\n2|Al Roe|0.18.31\n3|Cy Dee|1.02.03\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "course under a heading not known", file: "season",
		text:    "Date|Hub|Pos|Name|Time\n2026-01-03|Alder Bank|1|Jo Lee|18:20\n2026-01-03|Alder Bank|2|Al Roe|18:31\n2026-01-03|Alder Bank|3|Cy Dee|18:40\n2026-01-10|Mill Lane|1|Jo Lee|18:40\n2026-01-10|Mill Lane|2|Al Roe|18:41\n2026-01-10|Mill Lane|3|Cy Dee|18:49\n",
		columns: "date course position name time", run: "alder-bank 2026-01-03", rows: "2-7"},
	{name: "file names that programs give are no course", file: "scan00149", o: Options{Date: "2026-01-03"},
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "2-3", asks: "course-missing"},
	{name: "a slip in the name of a known course", file: "x", o: Options{Courses: []CourseName{{Course: "alder-bank", Weekday: -1}}},
		text:    "Aldder Bank 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "a slip, or another course", file: "x", o: Options{Courses: []CourseName{{Course: "mill-lane", Weekday: -1}}},
		text:    "Hill Lane 3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "hill-lane 2026-01-03", rows: "3-4", asks: "course-unclear"},
	{name: "prose with a weekday, a start time and a next run", file: "x", o: Options{Courses: []CourseName{{Course: "alder-bank", Weekday: 6}}},
		text:    "Alder Bank, 03/10/2026\nPlease send corrections to the desk before Tuesday 18:00, thank you all.\nNext week's run starts at 9:00 as usual. 3 volunteers still needed.\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-10-03", rows: "5-6"},
	{name: "marks after the times", file: "alder-bank_2026-01-03",
		text:    "Posn|Official time|Pts|Full name\n1|20:16*|100|Jo Lee\n2|21:33 SB|99|Al Roe\n3|22:38 (PB)|98|Cy Dee\n",
		columns: "position time points name", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "title read in the wrong encoding", file: "x",
		text:    "Resultat lÃ¶rdag 3 januari 2026, Alstrand\nplacering|namn|kÃ¶n|tid\n1|Jo Lee|K|18:20\n2|Al Roe|M|18:31\n",
		columns: "position name sex time", run: "alstrand 2026-01-03", rows: "3-4"},
	{name: "columns that stand under one another", file: "x", only: "text",
		text:    "ALDER BANK 5K   Saturday 3 January 2026\n\nPos   Name        Cat   Club             Time\n1     Jo Lee      W35   Fell Harriers    18:20\n2     Al Roe      M40                    18:31\n10    Cy O'Dee    M45   Vale             1:02:31\n",
		columns: "position name age-group club time", run: "alder-bank 2026-01-03", rows: "4-6"},
	{name: "a message", file: "x", only: "text",
		text:    "Alder Bank, 3 January 2026\n1. Jo Lee 18:20\n2. Al Roe - 18:31 (second run)\n3. Cy Dee 19:02\nthanks to Di\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "a message, men and women", file: "x", only: "text",
		text:    "Alder Bank 3 January 2026\n\nWOMEN\n1 Jo Lee 18:20\n2 Di Fox 19:31\nMEN\n1 Al Roe 18:02\n2 Cy Dee 18:33\n",
		columns: "- name time sex", run: "alder-bank 2026-01-03", rows: "4-5 7-8"},
	{name: "a line drawn under the heading", file: "alder-bank_2026-01-03", only: "text",
		text:    "| Pos | Name | Time |\n|-----|------|------|\n| 1 | Jo Lee | 18:20 |\n| 2 | Al Roe | 18:31 |\n",
		columns: "- position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "a run in each column", file: "x",
		text: "Winter series 2026\nName|Club|3 Jan|10 Jan|17 Jan\nJo Lee||18:20|18:11|\nAl Roe|Vale|19:01|DNF|18:59\n", o: Options{Course: "alder-bank"},
		columns: "name club time", run: "alder-bank 2026-01-03", rows: "3-4 3-4 4", kind: "excerpt"},
	{name: "a course and date in each column", file: "x",
		text:    "Runner|Alder Bank 3/1/2026|Mill Lane 17/1/2026\nJo Lee|18:20|18:11\nAl Roe|19:01|\n",
		columns: "name time", run: "alder-bank 2026-01-03", rows: "2-3 2", kind: "excerpt"},
	{name: "times in several columns and nothing that says which", file: "alder-bank_2026-01-03",
		text:    "Name|Week one|Week two\nJo Lee|18:20|18:11\nAl Roe|19:01|18:40\nCy Dee|18:59|19:31\n",
		columns: "name - -", run: "alder-bank 2026-01-03", rows: "2-4", asks: "time-column-missing"},
	{name: "places with times, then places with names", file: "alder-bank_2026-01-03",
		text:    "Pos|Time\n1|18:20\n2|18:31\n\nPos|Name\n1|Jo Lee\n2|Al Roe\n",
		columns: "position time", run: "alder-bank 2026-01-03", rows: "2-3 6-7", kind: "times"},
	{name: "seconds before minutes", file: "alder-bank_2026-01-03",
		text:    "Secs|Pos|Minutes|Name\n20|1|18|Jo Lee\n5|2|19|Al Roe\n|3|DNF|Cy Dee\n",
		columns: "- position - name time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "minutes and seconds side by side", file: "alder-bank_2026-01-03",
		text:    "Men|||||Women\nPosition|Name|Min|Sec||Position|Name|Min|Sec\n1|Al Roe|18|20||1|Jo Lee|19|2\n2|Cy Dee|18|31||2|Di Fox|20|44\n",
		columns: "position name - - time sex", run: "alder-bank 2026-01-03", rows: "3-4 3-4"},
	{name: "places and minutes and seconds, nobody named", file: "alder-bank_2026-01-03",
		text:    "Classement|Mins|Seconds\n1|18|20\n2|19|5\n",
		columns: "position - - time", run: "alder-bank 2026-01-03", rows: "2-3", kind: "times"},
	{name: "Tempo beside Laufzeit is the pace", file: "alder-bank_2026-01-03",
		text:    "Pl.|Tempo|Laufzeit|Name\n1|3:40|18:20|Jo Lee\n2|3:42|18:31|Al Roe\n3|4:00|20:00|Cy Dee\n4|4:30|22:31|Di Fox\n",
		columns: "position pace time name", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "Tempo beside Tid is the pace, four of ten times in hours and minutes", file: "alder-bank_2026-01-03",
		text:    "Placering|Navn|Tid|Tempo\n1|Jo Lee|25:30|5:06\n2|Al Roe|27:25|5:29\n3|Cy Dee|28:20|5:40\n4|Di Fox|31:00|6:12\n5|Ed Gow|31:00|6:12\n6|Fay Ash|33:40|6:44\n7|Gus Elm|1:18|15:36\n8|Hal Orr|1:20|16:00\n9|Ida May|1:21|16:12\n10|Jan Fen|1:29|17:48\n",
		columns: "position name time pace", run: "alder-bank 2026-01-03", rows: "2-11"},
	{name: "one letter for women on a sheet that says it in words", file: "alder-bank_2026-01-03",
		text:    "Name|Sex|Time\nJo Lee|Women|20.92\nAl Roe|Men|21.52\nCy Dee|Men|21.82\nEd Gow|Men|22.10\nIda May|L|22.85\nHal Orr|Men|23.02\nGus Elm|Men|23.92\nJan Fen|Men|24.40\nKit Ray|Men|24.70\nLeo Ott|Men|25.10\nMo Abe|Men|25.70\n",
		columns: "name sex time", run: "alder-bank 2026-01-03", rows: "2-12"},
	{name: "cells with spaces around them, whose words are those of headings", file: "alder-bank_2026-01-03",
		text:    "Position | First name | Last name | Sex | Club | Time | Notes\n 1 | Jo | Lee | F | Vale AC | 18:20 PB |  \n 2 | Kevin | Drayman | M | Vale AC | 18:42 PB | guide runner \n 3 | Al | Roe | M | Vale AC | 18:50 |  \n",
		columns: "position given-name family-name sex club time notes", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "the last place shared, its time spelled otherwise", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n\n3|Cy Dee|19:02\n\n|Di Fox|0:19:02\n\nRecord: Ed Gow 15:58\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3 5 7"},
	{name: "a place called after a month, below a day of the week", file: "march-hollow_2025-08-06",
		text:    "Please send corrections before Wednesday 18:00.||\nMarch Hollow results Saturday 9 August 2025||\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "march-hollow 2025-08-09", rows: "4-5"},
	{name: "the best of all times below, under no heading", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time|\n1|Jo Lee|18:20|\n2|Al Roe|18:31|\n3|Cy Dee|19:02|\n4|Di Fox|19:12|\n\nAll time top 3\n1|Ed Gow|15:30|2001\n2|Fay Ash|15:39|2002\n3|Gus Elm|15:48|2003\n",
		columns: "position name time -", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a place called after the club", file: "x",
		text:    "Club Lane results, Saturday 21 November 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "club-lane 2026-11-21", rows: "3-4"},
	{name: "the club's results are no place", file: "alder-bank",
		text:    "Club results, Saturday 21 November 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-11-21", rows: "3-4"},
	{name: "Tempo alone is the time", file: "alder-bank_2026-01-03",
		text:    "Posizione|Nominativo|Tempo\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
	{name: "no heading, times with a comma", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|18,20\n2|Al Roe|18,31\n3|Cy Dee|20,02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "1-3"},
	{name: "no heading, times with a colon or a dot", file: "alder-bank_2026-01-03",
		text:    "1|Jo Lee|18.20\n2|Al Roe|18:31\n3|Cy Dee|20.02\n4|Di Fox|20:10\n5|Ed Gow|21.10\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "1-5"},
	{name: "a person's name after the date", file: "x",
		text:    "Alder Bank 3 January 2026 - first woman: Cora Vale\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "the legend of a mark", file: "x",
		text:    "Results 3 January 2026\n* personal best\nAlder Bank\nPos|Name|Time\n1|Jo Lee|18:20*\n2|Al Roe|18:31\n",
		columns: "position name time notes", run: "alder-bank 2026-01-03", rows: "5-6"},
	{name: "marks under sexes and under age groups", file: "alder-bank_2026-01-03",
		text:    "No|Name|M|F|<18|18-39|40+|Time\n1|Jo Lee|x|||x||18:20\n2|Al Roe||x|x|||18:31\n3|Cy Dee|x||||x|18:40\n4|Di Fox||x||||19:40\n",
		columns: "position name sex - age-group - - time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "firsts of groups are no ages of others", file: "alder-bank_2026-01-03",
		text:    "No|Name|M|F|18-39|40+|Time\n1|Jo Lee|x||||18:20\n2|Al Roe||x|1||18:31\n3|Cy Dee|x||||18:40\n4|Di Fox||x||1|19:40\n5|Ed Gow||x|||19:48\n",
		columns: "position name sex - - - time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "ages under a word for years", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Jahre|Time\n1|Jo Lee|74|18:20\n2|Al Roe|11|18:31\n3|Cy Dee|45|19:02\n4|Di Fox|33|19:40\n5|Bo Ash|28|19:51\n",
		columns: "position name age time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "ages under a word for year", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|År|Time\n1|Jo Lee|74|18:20\n2|Al Roe|11|18:31\n3|Cy Dee|45|19:02\n4|Di Fox|33|19:40\n5|Bo Ash|28|19:51\n",
		columns: "position name age time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "years of two figures under a word for year", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|År|Time\n1|Jo Lee|74|18:20\n2|Al Roe|11|18:31\n3|Cy Dee|45|19:02\n4|Di Fox|83|19:40\n5|Bo Ash|98|19:51\n",
		columns: "position name birth-year time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "a series and the place of this run", file: "x",
		text:    "Karusell nr 5, Elvnes 9.9.2025|\n|Navn|Tid\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n",
		columns: "position name time", run: "elvnes 2025-09-09", rows: "3-5"},
	{name: "runners in Danish and where they ran", file: "x",
		text:    "Havnens Løbere, Åløb 7. maj 2025|\nNr.|Navn|Tid\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|18:40\n",
		columns: "position name time", run: "alob 2025-05-07", rows: "3-5"},
	{name: "people of many runs under a heading that nobody knows", file: "x",
		text:    "Member|Where|When|Time|Comment\nJo Lee|Alder Bank|3 January 2026|22:13|pb\nJo Lee|Quay Lane|10 January 2026|22:20|\nAl Roe|Alder Bank|3 January 2026|24:13|muddy\nAl Roe|Quay Lane|10 January 2026|24:19|\nCy Dee|Alder Bank|3 January 2026|25:13|\nDi Fox|Alder Bank|3 January 2026|26:13|\nDi Fox|Quay Lane|10 January 2026|26:03|\n",
		columns: "name course date time notes", run: "alder-bank 2026-01-03", rows: "2-8"},
	{name: "clubs of many runs, and no names", file: "x",
		text:    "Belongs|Where|When|Time\nVale Harriers|Alder Bank|3 January 2026|22:13\nVale Harriers|Alder Bank|3 January 2026|22:20\nFen Runners|Alder Bank|3 January 2026|24:13\nFen Runners|Quay Lane|10 January 2026|24:19\nFen Runners|Quay Lane|10 January 2026|25:13\nVale Harriers|Quay Lane|10 January 2026|26:13\n",
		columns: "- course date time", run: "alder-bank 2026-01-03", rows: "2-7", kind: "times"},
	{name: "since when somebody is a member, and ages at the end of the year in Danish", file: "alder-bank_2026-01-03",
		text:    "Plads|Navn|Alder pr. 31/12|Member since|Tid\n1|Jo Lee|44|1960|18:20\n2|Al Roe|31|1994|18:31\n3|Cy Dee|27|2010|19:02\n4|Di Fox|52|1971|19:40\n5|Bo Ash|61|1984|19:51\n6|Ed Gow|38|2001|20:02\n7|Jo Nye|33|1999|20:10\n8|Al Dow|29|1982|20:40\n",
		columns: "position name age - time", run: "alder-bank 2026-01-03", rows: "2-9"},
	{name: "codes of a letter and a number under a heading that nobody knows", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|URN|Time\n1|Jo Lee|M66|18:20\n2|Al Roe|K12|18:31\n3|Cy Dee|W92|19:02\n4|Di Fox|F31|19:40\n5|Bo Ash|M88|19:51\n6|Ed Gow|K45|20:02\n7|Jo Nye|W17|20:10\n8|Al Dow|M20|20:40\n",
		columns: "position name - time", run: "alder-bank 2026-01-03", rows: "2-9"},
	{name: "places in groups and of how many, beside ages", file: "alder-bank_2026-01-03",
		text:    "O'All|Name|Age|S|AG Place|Finish\n1|Jo Lee|19|M|1/12|15:44\n2|Al Roe|15|M|1/3|15:55\n3|Cy Dee|37|M|1/30|17:25\n4|Di Fox|41|F|2/12|19:40\n",
		columns: "position name age sex group-place time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "teams below the results", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Club|Time\n1|Jo Lee|Quay H|18:20\n2|Al Roe|Fen RC|18:31\n3|Cy Dee|Quay H|19:02\n4|Di Fox|Fen RC|19:40\nTeams\n1|Quay H|Lee, Dee|37:22\n2|Fen RC|Roe, Fox|38:11\n",
		columns: "position name club time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "how somebody took part, and a race by one letter", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Event|Time|Role\n1|Jo Lee|F|18:20|\n2|Al Roe|F|18:31|pacer\n3|Cy Dee|F|19:02|\n",
		columns: "position name - time notes", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "the year in which somebody joined, and teams' categories", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Year joined|Team category|Time\n1|Jo Lee|1980|Mixed|18:20\n2|Al Roe|1991|Male|18:31\n3|Cy Dee|2004|Female|19:02\n",
		columns: "position name - - time", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "characters of web pages", file: "x", only: "text",
		text:    "R&eacute;sultats Alder Bank 3 janvier 2026\nPlace,Nom et pr&eacute;nom,Cat&eacute;gorie,Temps\n1,Jo Lee,SEF,18:20\n2,Al Roe,SEM,18:31\n",
		columns: "position name age-group time", run: "alder-bank 2026-01-03", rows: "3-4"},
	{name: "somebody whose time was missed", file: "alder-bank_2026-01-03",
		text:    "Time|Name\n18:20|Jo Lee\n|Al Roe\n19:02|Cy Dee\n",
		columns: "time name", run: "alder-bank 2026-01-03", rows: "2-4"},
	{name: "the number of the run on a season list", file: "x",
		text:    "Event|No|Date|Pos|Name|Time\nAlder Bank|12|3 Jan 2026|1|Jo Lee|18:20\nAlder Bank|12|3 Jan 2026|2|Al Roe|18:31\nAlder Bank|13|10 Jan 2026|1|Al Roe|18:30\nAlder Bank|13|10 Jan 2026|2|Jo Lee|18:32\n",
		columns: "course - date position name time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "the moment at which each finished", file: "alder-bank_2026-01-03",
		text: "Pos|Moment|Elapsed\n1|03/01/2026 09:18:20|00:18:20\n2|03/01/2026 09:18:31|00:18:31\n3|03/01/2026 09:19:40|00:19:40\n4|03/01/2026 09:20:02|00:20:02\n5|03/01/2026 09:21:02|00:21:02\n6|03/01/2026 09:22:02|00:22:02\n", o: Options{DateOrder: "dmy"},
		columns: "position - time", run: "alder-bank 2026-01-03", rows: "2-7", kind: "times"},
	{name: "name cut in two by a comma", file: "alder-bank_2026-01-03", only: "text",
		text:    "Pos,Name,Time\n1,LEE, Jo,18:20\n2,ROE, Al,18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-3"},
}

func (c sheetCase) asText() []byte {
	if c.only == "text" {
		return []byte(c.text)
	}
	var b strings.Builder
	for _, line := range strings.SplitAfter(c.text, "\n") {
		cells := strings.Split(line, "|")
		for i, cell := range cells {
			if strings.Contains(cell, ",") {
				nl := strings.HasSuffix(cell, "\n")
				cell = `"` + strings.TrimSuffix(cell, "\n") + `"`
				if nl {
					cell += "\n"
				}
			}
			cells[i] = cell
		}
		b.WriteString(strings.Join(cells, ","))
	}
	return []byte(b.String())
}

func (c sheetCase) asWorkbook(t *testing.T) []byte {
	f := excelize.NewFile()
	defer f.Close()
	for r, line := range strings.Split(strings.TrimSuffix(c.text, "\n"), "\n") {
		for i, cell := range strings.Split(line, "|") {
			if cell == "" {
				continue
			}
			name, _ := excelize.CoordinatesToCellName(i+1, r+1)
			if err := f.SetCellStr("Sheet1", name, cell); err != nil {
				t.Fatal(err)
			}
		}
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// outcome is what was read, in the words of a sheetCase.
func outcome(s *Sheet) sheetCase {
	var got sheetCase
	var rows []int
	asks := map[string]bool{}
	for i, p := range s.Parts {
		if i == 0 {
			var ms []string
			for _, c := range p.Columns {
				m := c.Meaning.String()
				if c.Meaning == Other {
					m = "-"
				}
				ms = append(ms, m)
			}
			got.columns = strings.Join(ms, " ")
			got.run = p.RunOfFirst()
			got.kind = p.Kind
		}
		p.Each(func(row int, cells []string) error {
			rows = append(rows, row)
			return nil
		})
		for _, q := range p.Problems {
			if q.Severity == place.Waits {
				asks[q.Kind] = true
			}
		}
	}
	for i := 0; i < len(rows); {
		j := i
		for j+1 < len(rows) && rows[j+1] == rows[j]+1 {
			j++
		}
		if got.rows != "" {
			got.rows += " "
		}
		if got.rows += fmt.Sprint(rows[i]); j > i {
			got.rows += fmt.Sprintf("-%d", rows[j])
		}
		i = j + 1
	}
	var kinds []string
	for k := range asks {
		kinds = append(kinds, k)
	}
	sort.Strings(kinds)
	got.asks = strings.Join(kinds, " ")
	return got
}

func TestSheets(t *testing.T) {
	for _, c := range slices.Concat(sheetCases, strangerCases) {
		check := func(form, ending string, data []byte) {
			t.Run(c.name+" as "+form, func(t *testing.T) {
				s, err := Read(c.file+ending, data, c.o)
				if err != nil {
					t.Fatal(err)
				}
				got := outcome(s)
				if c.kind == "" {
					got.kind = ""
				}
				if got.columns != c.columns || got.run != c.run || got.rows != c.rows || got.asks != c.asks || got.kind != c.kind {
					var b strings.Builder
					s.Describe(&b)
					t.Errorf("columns %q\n   want %q\nrun  %q\nwant %q\nrows %q want %q, asks %q want %q, kind %q want %q\n%s", got.columns, c.columns, got.run, c.run, got.rows, c.rows, got.asks, c.asks, got.kind, c.kind, b.String())
				}
			})
		}
		check("text", ".csv", c.asText())
		if plainTable(c.asText()) {
			sameBothWays(t, c.name, c.asText())
		}
		if c.only != "text" {
			check("workbook", ".xlsx", c.asWorkbook(t))
		}
	}
}

// A tab and a file that only say that there is a series name no course.
func TestTabOfSeries(t *testing.T) {
	data := workbook(t, func(x *excelize.File) {
		if err := x.SetSheetName("Sheet1", "Serien"); err != nil {
			t.Fatal(err)
		}
		setRows(t, x, "Serien", []any{"Hällsjön"}, []any{"3 januari 2026"}, []any{"Plac", "Namn", "Tid"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", "18:31"})
	})
	s, err := Read("serien del 1.xlsx", data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := s.Parts[0].RunOfFirst(); got != "hallsjon 2026-01-03" {
		t.Errorf("run %q", got)
	}
}

// A program that turns a text into a workbook names the tab after the file:
// the two don't confirm each other against the title.
func TestTabNamedByFile(t *testing.T) {
	data := workbook(t, func(x *excelize.File) {
		if err := x.SetSheetName("Sheet1", "winter grid"); err != nil {
			t.Fatal(err)
		}
		setRows(t, x, "winter grid", []any{"Alder Bank 3 January 2026"}, []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", "18:31"})
	})
	s, err := Read("winter grid.xlsx", data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := s.Parts[0].RunOfFirst(); got != "alder-bank 2026-01-03" {
		t.Errorf("run %q", got)
	}
}
