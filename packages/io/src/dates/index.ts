export { isCalendarDay } from "./calendar-day.ts";
