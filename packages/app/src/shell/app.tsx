import { useLookOnPage } from './preferences.ts';
import { useRoute } from './route.ts';
import { StudiesPage } from './studies-page.tsx';
import { StudyPage } from './study-page.tsx';

export function App() {
  useLookOnPage();
  const route = useRoute();
  return route.page === 'study' ? <StudyPage key={route.study} route={route} /> : <StudiesPage />;
}
